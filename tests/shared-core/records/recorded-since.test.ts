import { describe, expect, test } from 'vitest';
import { sessions } from '../../../shared-core/sessions/session.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { householdWithSession, SESSION_DAY, sessionOf } from '../work/doing-household.ts';

const DAY = SESSION_DAY as never;
const LATER = '2026-12-12' as never;
const oil = { kind: 'item', id: 'oil' } as const;

/** The car without a session, on the day on which it is worked on. */
function unplanned(): MemoryHousehold {
  const household = householdWithSession();
  household.must('session.end', { session: sessionOf(household), as: 'cancelled' });
  return household.on(SESSION_DAY);
}

const keep = (household: MemoryHousehold, day: typeof DAY, ...ids: readonly string[]) => household.must('session.keep', { sessions: [{ day, place: 'home', tasks: ids.map((id) => ({ kind: 'item', id })) }] }).sessions[0]?.id ?? '';
const record = (household: MemoryHousehold, ...ids: readonly string[]) => household.must('record.add', { car: 'pip', lines: ids.map((item) => ({ item })) }).record.id;
const shown = (household: MemoryHousehold, id: string) => household.must('sessions.show', {}).sessions.find((one) => one.id === id)?.tasks.map(({ task, done }) => `${task.id}${done ? ' done' : ''}`);
const closed = (household: MemoryHousehold, session: string) => household.call('session.close', { session, cars: [{ car: 'pip', lines: [{ item: 'oil' }] }] });

describe('a task recorded on the day on which it is put into a session', () => {
  test('is still to be done there when the record was written before, and its second record is no question', () => {
    const household = unplanned();
    household.at('10:00:00');
    record(household, 'oil');
    const session = keep(household.at('11:00:00'), DAY, 'oil');
    expect(shown(household, session)).toEqual(['oil']);
    expect(household.must('work.show', { session }).steps.length).toBeGreaterThan(2);
    expect(closed(household.at('12:00:00'), session)).toMatchObject({ ok: true });
  });

  test('is done there when the record was written since, however the record is amended later', () => {
    const household = unplanned();
    const session = keep(household.at('10:00:00'), DAY, 'oil', 'polish');
    const id = record(household.at('11:00:00'), 'oil');
    household.at('12:00:00').must('record.amend', { id, why: 'misread', printedTotalMinor: 3490 });
    expect(shown(household, session)).toEqual(['oil done', 'polish']);
    expect(closed(household, session)).toMatchObject({ refusal: { code: 'task-recorded' } });
  });
});

describe('a task that joins another session is meant to be done since it was before', () => {
  test('joining an older one does not make it done by a record from before it was planned', () => {
    const household = unplanned();
    const older = keep(household.at('08:00:00'), LATER, 'polish');
    record(household.at('09:00:00'), 'oil');
    const younger = keep(household.at('10:00:00'), DAY, 'oil');
    household.must('session.move', { session: younger, day: LATER });
    expect(shown(household, older)).toEqual(['polish', 'oil']);
    // Moved on as a part, it keeps that.
    const part = household.must('session.move', { session: older, day: '2026-12-13' as never, tasks: [oil] }).session.id;
    expect(shown(household, part)).toEqual(['oil']);
    expect(household.facts().get(sessions, older)).not.toHaveProperty('joined');
  });

  test('nor does joining a younger one revive what was recorded since it was planned', () => {
    const household = unplanned();
    const older = keep(household.at('08:00:00'), DAY, 'oil', 'brakes');
    record(household.at('09:00:00'), 'oil');
    const younger = keep(household.at('10:00:00'), LATER, 'polish');
    household.must('session.move', { session: older, day: LATER });
    expect(shown(household, younger)).toEqual(['polish', 'oil done', 'brakes']);
  });

  test('across days too', () => {
    const household = unplanned();
    keep(household, LATER, 'polish');
    household.on('2026-12-06');
    record(household, 'oil');
    const fresh = keep(household.on('2026-12-07'), '2026-12-08' as never, 'oil');
    const joined = household.must('session.move', { session: fresh, day: LATER }).session;
    expect(joined).toMatchObject({ madeOn: SESSION_DAY, joined: [{ task: oil, on: '2026-12-07' }] });
    expect(shown(household, joined.id)).toEqual(['polish', 'oil']);
  });
});

describe('the note of a session that joins', () => {
  const kept = (household: MemoryHousehold, day: typeof DAY, id: string, note: string) => household.must('session.keep', { sessions: [{ day, place: 'home', tasks: [{ kind: 'item', id }], note }] }).sessions[0]?.id ?? '';

  test('stands under the one that was there, once', () => {
    const household = unplanned();
    const there = kept(household, LATER, 'polish', 'Borrow the lamp');
    const first = kept(household, DAY, 'oil', 'Ask a friend');
    expect(household.must('session.move', { session: first, day: LATER }).session).toMatchObject({ id: there, note: 'Borrow the lamp\nAsk a friend' });
    expect(kept(household, LATER, 'brakes', 'Borrow the lamp\nAsk a friend')).toBe(there);
    expect(household.facts().get(sessions, there)?.note).toBe('Borrow the lamp\nAsk a friend');
  });

  test('is never cut: what is too long together stays apart', () => {
    const household = unplanned();
    kept(household, LATER, 'polish', 'a'.repeat(400));
    const first = kept(household, DAY, 'oil', 'b'.repeat(101));
    expect(household.call('session.move', { session: first, day: LATER })).toMatchObject({ refusal: { code: 'session-notes-too-long', values: { over: 2, most: 500 } } });
    expect(household.facts().get(sessions, first)?.day).toBe(SESSION_DAY);
  });
});
