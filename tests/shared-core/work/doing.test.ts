import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { isBefore, secondsBetween } from '../../../shared-core/work/instant.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { begunHousehold, householdWithSession, SESSION_DAY, sessionOf } from './doing-household.ts';

const steps = (household: MemoryHousehold, session: string) => household.must('work.show', { session }).steps;
const step = (household: MemoryHousehold, session: string, text: string) => {
  const found = steps(household, session).find((one) => one.text === text);
  if (found === undefined) throw new Error(`no step: ${text}`);
  return found;
};
const tick = (household: MemoryHousehold, session: string, text: string, more: Partial<RequestOf<'work.tick'>> = {}) => household.must('work.tick', { session, of: step(household, session, text).of, ...more });

describe('a session as it is worked', () => {
  test('shows one thing after another: steps in working order, what has no sheet, then checks and what is set back', () => {
    const household = householdWithSession();
    expect(steps(household, sessionOf(household)).map((one) => [one.place, one.kind, one.text])).toEqual([
      [1, 'step', 'Take the undertray off.'], [2, 'step', 'Drain the oil.'], [3, 'step', 'Measure the outer pad.'], [4, 'step', 'Look at the hoses.'],
      [5, 'whole', 'Do it: Polish. Nobody has written its steps.'], [6, 'step', 'Fill it in.'], [7, 'whole', 'Close: undertray'], [8, 'check', 'No drop below'], [9, 'reset', 'Set the reminder back'],
    ]);
  });

  test('gives the cautions of a step in full beside it, and all of them before it is begun', () => {
    const household = householdWithSession();
    const session = sessionOf(household);
    const drain = step(household, session, 'Drain the oil.');
    expect(drain.cautions.map((one) => one.name)).toEqual(['Hot', 'Used oil']);
    expect(drain.cautions[0]?.said.text).toMatch(/^Hot oil, coolant, steam and exhaust scald/);
    const doing = household.must('work.show', { session });
    expect(doing.begunAt).toBeNull();
    expect(doing.cautions.map((one) => one.hazard)).toEqual([null, null, 'lifting', 'brakes', 'running-engine', 'hot', 'used-oil', 'heavy']);
  });

  test.each([
    ['work.tick', { of: [{ task: 'item/oil', step: 'step-1' }] }],
    ['work.untick', { of: [{ task: 'item/oil', step: 'step-1' }] }],
    ['work.time', { task: 'item/oil', run: true }],
    ['work.find', { at: { task: 'item/oil', step: 'step-1' }, severity: 'watch' }],
    ['work.photo', { car: 'pip', paper: 'a'.repeat(64) }],
    ['work.read', { at: { task: 'item/oil', step: 'step-2' }, read: { kind: 'torque', name: 'Drain plug', typed: { value: 30, unit: 'Nm' } } }],
  ] as const)('%s is refused before the cautions were read', (name, more) => {
    const household = householdWithSession();
    expect(household.call(name, { session: sessionOf(household), ...more } as never)).toMatchObject({ ok: false, refusal: { code: 'work-not-begun' } });
  });

  test('is not begun while it is only proposed, nor once it is ended', () => {
    const household = householdWithSession(['oil']);
    household.must('session.propose', { sessions: [{ day: '2026-12-12' as never, place: 'home', tasks: [{ kind: 'item', id: 'polish' }] }] });
    const proposed = household.must('sessions.show', {}).sessions.find((one) => one.state === 'proposed')?.id ?? '';
    expect(household.call('work.begin', { session: proposed })).toMatchObject({ ok: false, refusal: { code: 'session-not-kept' } });
    const kept = sessionOf(household);
    household.must('session.end', { session: kept, as: 'cancelled' });
    expect(household.call('work.begin', { session: kept })).toMatchObject({ ok: false, refusal: { code: 'session-ended' } });
  });

  test('begun twice is begun once', () => {
    const { household, session } = begunHousehold();
    const before = household.entries.length;
    expect(household.at('11:00:00').must('work.begin', { session }).begun.at).toBe(`${SESSION_DAY}T09:00:00.000Z`);
    expect(household.entries).toHaveLength(before);
  });

  test('a tick stands with its day and hour, is taken off, and a step left out says why', () => {
    const { household, session } = begunHousehold();
    household.at('09:10:00');
    tick(household, session, 'Drain the oil.');
    expect(step(household, session, 'Drain the oil.').tick).toMatchObject({ as: 'done', on: SESSION_DAY, at: `${SESSION_DAY}T09:10:00.000Z` });
    expect(household.call('work.tick', { session, of: step(household, session, 'Fill it in.').of, as: 'left-out', note: ' ' })).toMatchObject({ ok: false, refusal: { code: 'left-out-why' } });
    tick(household, session, 'Drain the oil.', { as: 'left-out', note: 'plug round' });
    expect(step(household, session, 'Drain the oil.').tick).toMatchObject({ as: 'left-out', note: 'plug round' });
    household.must('work.untick', { session, of: step(household, session, 'Drain the oil.').of });
    expect(step(household, session, 'Drain the oil.').tick).toBeNull();
    expect(household.call('work.untick', { session, of: step(household, session, 'Drain the oil.').of })).toMatchObject({ ok: false, refusal: { code: 'step-not-ticked' } });
  });

  test('a step of a task that is not in the session is refused', () => {
    const { household, session } = begunHousehold(['oil']);
    expect(household.call('work.tick', { session, of: [{ task: 'item/brakes', step: 'step-1' }] })).toMatchObject({ ok: false, refusal: { code: 'task-not-in-session' } });
  });

  test('what is read at a step takes the place of what was read there before; what cannot be is refused', () => {
    const { household, session } = begunHousehold();
    const at = step(household, session, 'Measure the outer pad.').of[0] ?? { task: '', step: '' };
    const read = (value: number, unit: 'mm' | 'V' = 'mm') => household.call('work.read', { session, at, read: { kind: 'measured', what: 'pad', name: null, place: 'front-left', typed: { value, unit } } });
    expect(read(61)).toMatchObject({ ok: false, refusal: { code: 'measured-value-absurd' } });
    expect(read(6, 'V')).toMatchObject({ ok: false, refusal: { code: 'measure-unit-differs' } });
    expect(read(6).ok).toBe(true);
    expect(read(5.5).ok).toBe(true);
    const [value, ...more] = step(household, session, 'Measure the outer pad.').values;
    expect([value?.read, more]).toMatchObject([{ typed: { value: 5.5, unit: 'mm' } }, []]);
    household.must('work.unread', { session, value: value?.id ?? '' });
    expect(step(household, session, 'Measure the outer pad.').values).toEqual([]);
  });
});

describe('the time of a session', () => {
  const seconds = (household: MemoryHousehold, session: string) => Object.fromEntries(household.must('work.show', { session }).tasks.map((one) => [one.key, one.seconds]));

  test('runs for one task at a time, pauses, and goes on', () => {
    const { household, session } = begunHousehold();
    household.at('09:00:00').must('work.time', { session, task: 'item/oil', run: true });
    household.at('09:10:00').must('work.time', { session, task: 'item/brakes', run: true });
    household.at('09:15:30').must('work.time', { session, task: null, run: false });
    household.at('10:00:00').must('work.time', { session, task: 'item/oil', run: true });
    household.at('10:00:20');
    // By hand: oil 600 s and then 20 s so far; brakes 330 s; the pause counts for nobody.
    expect(seconds(household, session)).toEqual({ 'item/oil': 620, 'item/brakes': 330, 'item/polish': 0 });
    expect(household.must('work.show', { session }).running).toEqual({ task: 'item/oil', name: 'Engine oil and filter', from: `${SESSION_DAY}T10:00:00.000Z` });
  });

  test('what was left running ends when it was last vouched for, never before it began nor after now', () => {
    const { household, session } = begunHousehold();
    household.at('09:00:00').must('work.time', { session, task: 'item/oil', run: true });
    household.at('09:20:00');
    tick(household, session, 'Drain the oil.');
    expect(household.at('09:30:00').must('work.show', { session }).leftRunning).toBe(false);
    expect(household.at('09:30:01').must('work.show', { session }).leftRunning).toBe(true);
    household.at('12:00:00');
    const { lastSign } = household.must('work.show', { session });
    expect(lastSign).toBe(`${SESSION_DAY}T09:20:00.000Z`);
    for (const upTo of [`${SESSION_DAY}T08:59:59.000Z`, `${SESSION_DAY}T12:00:01.000Z`]) expect(household.call('work.time', { session, task: null, run: false, upTo })).toMatchObject({ ok: false, refusal: { code: 'time-ends-outside' } });
    household.must('work.time', { session, task: 'item/oil', run: true, upTo: lastSign });
    household.at('12:01:00');
    expect(seconds(household, session)['item/oil']).toBe(20 * 60 + 60);
  });

  test('of any starts and pauses, the times of all tasks add up to the time in which one ran', () => {
    fc.assert(fc.property(fc.array(fc.record({ after: fc.integer({ min: 0, max: 900 }), task: fc.constantFrom('item/oil', 'item/brakes', null), run: fc.boolean() }), { minLength: 1, maxLength: 12 }), (presses) => {
      const { household, session } = begunHousehold();
      let [clock, ran, running] = [9 * 3600, 0, false];
      for (const { after, task, run } of presses) {
        clock += after;
        if (running) ran += after;
        household.at(clockTime(clock)).must('work.time', { session, task, run });
        running = run;
      }
      const { tasks, sharedSeconds } = household.must('work.show', { session });
      expect(tasks.reduce((sum, one) => sum + one.seconds, sharedSeconds)).toBe(ran);
    }), { numRuns: 40 });
  });

  test('a clock that is set back takes nothing away', () => {
    expect(secondsBetween('2026-12-05T10:00:00.000Z', '2026-12-05T09:00:00.000Z')).toBe(0);
  });

  test('a clock that is set back locks nothing: what runs is paused with nothing counted, and another task runs', () => {
    const { household, session } = begunHousehold();
    household.at('10:00:00').must('work.time', { session, task: 'item/oil', run: true });
    household.at('09:30:00').must('work.time', { session, task: 'item/brakes', run: true });
    household.at('09:45:00').must('work.time', { session, task: null, run: false });
    expect(seconds(household, session)).toEqual({ 'item/oil': 0, 'item/brakes': 15 * 60, 'item/polish': 0 });
    expect(household.must('work.show', { session }).running).toBeNull();
  });

  test('until the clock is where it was, what runs may end where it began', () => {
    const { household, session } = begunHousehold();
    household.at('10:00:00').must('work.time', { session, task: 'item/oil', run: true });
    household.at('09:30:00').must('work.time', { session, task: null, run: false, upTo: `${SESSION_DAY}T10:00:00.000Z` });
    expect(seconds(household, session)['item/oil']).toBe(0);
  });

  test('an instant counts the same however finely it is written', () => {
    expect([isBefore('2026-12-05T09:30:00Z', '2026-12-05T09:30:00.000Z'), isBefore('2026-12-05T09:30:00.000Z', '2026-12-05T09:30:00Z'), isBefore('2026-12-05T09:30:00Z', '2026-12-05T09:30:00.001Z')]).toEqual([false, false, true]);
    const { household, session } = begunHousehold();
    household.at('09:00:00').must('work.time', { session, task: 'item/oil', run: true });
    household.at('09:30:00').must('work.time', { session, task: null, run: false, upTo: `${SESSION_DAY}T09:30:00Z` });
    expect(seconds(household, session)['item/oil']).toBe(30 * 60);
  });

  test.each([
    { case: 'soon after a sign of work: until then', at: '09:14:00', ran: 14 * 60 },
    { case: 'long after it: when it was last vouched for', at: '09:40:00', ran: 5 * 60 },
  ])('what runs in another session is paused, $case', ({ at, ran }) => {
    const { household, session } = begunHousehold(['oil']);
    household.must('session.keep', { sessions: [{ id: 'other', day: '2026-12-06' as never, place: 'home', tasks: [{ kind: 'item', id: 'polish' }] }] });
    household.must('work.begin', { session: 'other' });
    household.at('09:00:00').must('work.time', { session, task: 'item/oil', run: true });
    household.at('09:05:00');
    tick(household, session, 'Drain the oil.');
    const { running, paused } = household.at(at).must('work.time', { session: 'other', task: 'item/polish', run: true });
    expect([running?.session, paused.map((one) => one.session)]).toEqual(['other', [session]]);
    household.at('12:00:00');
    expect(household.must('work.show', { session }).running).toBeNull();
    expect(seconds(household, session)['item/oil']).toBe(ran);
  });

  test('is paused while a caution is unread that came since, and goes on once it is read', () => {
    const { household, session } = begunHousehold(['oil']);
    household.at('09:00:00').must('work.time', { session, task: 'item/oil', run: true });
    household.must('sheet.set', { item: 'oil', steps: [{ text: 'Loosen the spring.', hazards: ['springs'] }] });
    const unread = { ok: false, refusal: { code: 'cautions-unread' } };
    expect(household.at('09:10:00').call('work.time', { session, task: 'item/oil', run: true })).toMatchObject(unread);
    household.must('work.time', { session, task: 'item/oil', run: false });
    expect(household.at('09:30:00').must('work.show', { session })).toMatchObject({ running: null, tasks: [{ seconds: 600 }] });
    expect(household.call('work.time', { session, task: 'item/oil', run: true })).toMatchObject(unread);
    household.must('work.begin', { session });
    expect(household.must('work.time', { session, task: 'item/oil', run: true }).running?.task).toBe('item/oil');
  });

  test('pausing in one session leaves what runs in another', () => {
    const { household, session } = begunHousehold(['oil']);
    household.must('session.keep', { sessions: [{ id: 'other', day: '2026-12-06' as never, place: 'home', tasks: [{ kind: 'item', id: 'polish' }] }] });
    household.must('work.begin', { session: 'other' });
    household.at('09:00:00').must('work.time', { session, task: 'item/oil', run: true });
    expect(household.at('09:01:00').must('work.time', { session: 'other', task: null, run: false })).toEqual({ running: null, paused: [] });
    expect(household.must('work.show', { session }).running?.task).toBe('item/oil');
  });

  test.each([
    { case: 'a find', sign: (household: MemoryHousehold, session: string) => household.must('work.find', { session, at: { task: 'item/oil', step: 'step-2' }, severity: 'watch' }) },
    { case: 'a photograph', sign: (household: MemoryHousehold, session: string) => household.must('work.photo', { session, car: 'pip', paper: 'a'.repeat(64) }) },
  ])('$case is a sign of work, by its instant', ({ sign }) => {
    const { household, session } = begunHousehold(['oil']);
    household.at('09:00:00').must('work.time', { session, task: 'item/oil', run: true });
    household.at('09:25:00');
    sign(household, session);
    expect(household.at('12:00:00').must('work.show', { session })).toMatchObject({ lastSign: `${SESSION_DAY}T09:25:00.000Z`, leftRunning: true });
    expect(household.must('work.closing', { session }).cars[0]?.tasks[0]?.minutes).toBe(25);
  });

  test('a tick the next morning does not vouch for the night: it counts to the last sign before, and goes on from the tick', () => {
    const { household, session } = begunHousehold(['oil']);
    household.at('20:00:00').must('work.time', { session, task: 'item/oil', run: true });
    household.at('20:40:00');
    tick(household, session, 'Drain the oil.');
    household.on('2026-12-06').at('08:00:00');
    tick(household, session, 'Fill it in.');
    const minutes = () => household.must('work.closing', { session }).cars[0]?.tasks[0]?.minutes;
    expect([minutes(), seconds(household, session)['item/oil']]).toEqual([40, 40 * 60]);
    // Half an hour more in the morning counts as well; by hand 40 + 30 min. The night from 20:40 to 8:00 is left out.
    household.at('08:30:00');
    tick(household, session, 'No drop below');
    expect(minutes()).toBe(70);
    expect(household.must('work.closing', { session }).ranOn).toMatchObject({ after: `${SESSION_DAY}T20:40:00.000Z`, minutes: 11 * 60 + 20 });
    household.must('work.time', { session, task: null, run: false });
    expect(seconds(household, session)['item/oil']).toBe(70 * 60);
  });

  test.each([
    { case: 'four hours without a sign count whole', at: '13:00:00', ran: 4 * 3600 },
    { case: 'a second more, and they do not', at: '13:00:01', ran: 0 },
  ])('$case, unless the keeper says until when', ({ at, ran }) => {
    const { household, session } = begunHousehold(['oil']);
    household.at('09:00:00').must('work.time', { session, task: 'item/oil', run: true });
    household.at(at);
    tick(household, session, 'Drain the oil.');
    expect(seconds(household, session)['item/oil']).toBe(ran);
    household.must('work.time', { session, task: null, run: false, upTo: `${SESSION_DAY}T${at}.000Z` });
    expect(seconds(household, session)['item/oil']).toBe(at === '13:00:00' ? 14_400 : 14_401);
  });

  test('a session that is cancelled says its minutes to the last sign of work', () => {
    const { household, session } = begunHousehold(['oil']);
    household.at('20:00:00').must('work.time', { session, task: 'item/oil', run: true });
    household.at('20:40:00');
    tick(household, session, 'Drain the oil.');
    const refused = household.on('2026-12-06').call('session.end', { session, as: 'cancelled' });
    expect(refused).toMatchObject({ ok: false, refusal: { code: 'work-in-hand', values: { what: expect.stringMatching(/\b40 min/) as string } } });
  });
});

function clockTime(seconds: number): string {
  return [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60].map((one) => String(one).padStart(2, '0')).join(':');
}
