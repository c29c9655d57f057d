import { describe, expect, test } from 'vitest';
import { newEntry, type Entry } from '../../../shared-core/journal/entry-kind.ts';
import { paperKept } from '../../../shared-core/records/paper.ts';
import { sayRefusal } from '../../../shared-core/result/words/say.ts';
import { paperUses } from '../../../shared-core/views/paper-uses.ts';
import { spans, stepKey } from '../../../shared-core/work/doing.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { begunHousehold, SESSION_DAY } from './doing-household.ts';

// Source for all: our own rule, after DESIGN.md section 5: nothing confirmed is ever lost.
const item = (id: string) => ({ kind: 'item' as const, id });
const show = (household: MemoryHousehold, session: string) => household.must('work.show', { session });
const keep = (household: MemoryHousehold, day: string, ...ids: string[]) => household.must('session.keep', { sessions: [{ day: day as never, place: 'home', tasks: ids.map(item) }] }).sessions[0]?.id ?? '';

describe('an access that two tasks spell otherwise', () => {
  /** The filters both lie behind one cover, of which nobody has written how it comes off. */
  function behindOneCover() {
    const { household } = begunHousehold(['oil']);
    for (const [id, access] of [['air', 'Engine Cover'], ['cabin', 'engine cover ']] as const) household.must('item.add', { id, car: 'pip', name: `${id} filter`, interval: { repeat: { months: 12, distance: null } }, access: [access] });
    const session = keep(household, '2026-12-12', 'air', 'cabin');
    household.on('2026-12-12').must('work.begin', { session });
    const step = (text: string) => show(household, session).steps.find((one) => one.text.toLowerCase().trim() === text);
    return { household, session, step };
  }

  test.each(['air', 'cabin'])('stays ticked when %s leaves the session', (gone) => {
    const { household, session, step } = behindOneCover();
    household.must('work.tick', { session, of: step('open: engine cover')?.of ?? [] });
    household.must('session.release', { session, tasks: [item(gone)], sure: true });
    expect(step('open: engine cover')?.tick).toMatchObject({ as: 'done' });
    expect(step('close: engine cover')?.tick).toBeNull();
  });

  test('is ticked as it was spelled before, too, and is one step', () => {
    const { household, session, step } = behindOneCover();
    const spelled = (['air', 'cabin'] as const).map((id) => ({ task: `item/${id}`, step: 'open: ENGINE cover' }));
    household.must('work.tick', { session, of: spelled });
    expect(step('open: engine cover')?.tick).toMatchObject({ as: 'done' });
    household.must('work.untick', { session, of: step('open: engine cover')?.of ?? [] });
    expect(step('open: engine cover')?.tick).toBeNull();
    expect(household.call('work.tick', { session, of: [{ task: 'item/air', step: 'open: bonnet' }] })).toMatchObject({ ok: false, refusal: { code: 'unknown-step' } });
    expect(stepKey({ task: 'item/air', step: 'check: Open: Cover' })).toBe('item/air check: Open: Cover');
  });
});

const at = (time: string) => `${SESSION_DAY}T${time}.000Z`;

/** Two cars of which a session is worked; a third kept day ahead to move to. */
function twoCars() {
  const { household, session } = begunHousehold(['oil', 'brakes']);
  household.must('car.add', { id: 'wren', name: 'Wren', power: 'petrol', year: 2000, use: 'hobby' });
  for (const id of ['wax', 'dust']) household.must('item.add', { id, car: 'wren', name: id, interval: { repeat: { months: 12, distance: null } } });
  keep(household, SESSION_DAY, 'wax', 'dust');
  household.must('work.begin', { session });
  return { household, session };
}

/** A photograph of a car at no step of its own, of a paper that is kept. */
function photograph(household: MemoryHousehold, session: string, car: string, digit: string): string {
  const paper = digit.repeat(64);
  const kept = newEntry(paperKept, { id: paper, name: `${digit}.jpg`, media: 'image/jpeg', bytes: 100 });
  (household.entries as Entry[]).push({ ...kept, seq: household.entries.length, at: at('09:00:00') });
  household.must('work.photo', { session, car, paper });
  return paper;
}

const usesOf = (household: MemoryHousehold, paper: string) => (paperUses(household.facts()).get(paper) ?? []).map((one) => `${one.kind} ${one.id}`);

describe('time of what has left a session', () => {
  test('ends with its task at the last sign of work, and is none that others share', () => {
    const { household, session } = twoCars();
    household.at('09:00:00').must('work.time', { session, task: 'item/wax', run: true });
    household.at('09:20:00').must('work.tick', { session, of: [{ task: 'item/dust', step: 'whole' }] });
    household.at('11:00:00').must('session.release', { session, tasks: [item('wax')], sure: true });
    expect(household.facts().all(spans)).toMatchObject([{ task: 'item/wax', to: at('09:20:00') }]);
    expect(show(household, session)).toMatchObject({ running: null, leftRunning: false, sharedSeconds: 0 });
    expect(household.must('work.closing', { session })).toMatchObject({ ranOn: null, sharedSeconds: 0 });
  });

  test('is not counted once more when the session is dropped', () => {
    const { household, session } = twoCars();
    household.at('09:00:00').must('work.time', { session, task: 'item/wax', run: true });
    household.at('09:08:00').must('session.release', { session, tasks: [item('wax')], sure: true });
    household.must('work.tick', { session, of: [{ task: 'item/dust', step: 'whole' }] });
    expect(household.call('session.end', { session, as: 'cancelled' })).toMatchObject({ ok: false, refusal: { values: { what: '1 ticked' } } });
  });

  test('that ran on from before ends were written is nobody’s', () => {
    const { household, session } = twoCars();
    household.at('09:00:00').must('work.time', { session, task: 'item/wax', run: true });
    household.must('session.release', { session, tasks: [item('wax')], sure: true });
    const ended = household.entries.findLast((one) => one.kind === 'time-taken');
    Object.assign(ended?.values as object, { to: null });
    household.at('09:30:00');
    expect(show(household, session)).toMatchObject({ running: null, leftRunning: false });
  });

  test('of a task that is recorded meanwhile keeps its name', () => {
    const { household, session } = twoCars();
    household.at('09:00:00').must('work.time', { session, task: 'item/wax', run: true });
    household.must('record.add', { car: 'wren', lines: [{ item: 'wax' }] });
    expect(show(household, session).running?.name).toBe('wax');
  });

  test('ends with the session that is dropped', () => {
    const { household, session } = twoCars();
    household.at('09:00:00').must('work.time', { session, task: null, run: true });
    expect(household.call('session.end', { session, as: 'cancelled' })).toMatchObject({ ok: false, refusal: { code: 'work-in-hand', values: { what: 'time running' } } });
    household.at('09:04:00').must('session.end', { session, as: 'cancelled', sure: true });
    expect(household.facts().all(spans)).toMatchObject([{ to: at('09:04:00') }]);
  });
});

describe('a photograph of a car at no step', () => {
  test('stays in the session while its car does, and goes among the papers of the car with its last task', () => {
    const { household, session } = twoCars();
    const paper = photograph(household, session, 'wren', 'b');
    household.must('session.release', { session, tasks: [item('wax')] });
    expect(show(household, session).photos).toMatchObject([{ car: 'wren', paper }]);
    expect(household.call('session.release', { session, tasks: [item('dust')] })).toMatchObject({ ok: false, refusal: { code: 'work-in-hand-on-task', values: { what: '1 photographed' } } });
    household.must('session.release', { session, tasks: [item('dust')], sure: true });
    expect([show(household, session).photos, usesOf(household, paper)]).toEqual([[], ['car wren']]);
  });

  test('goes along with the last task of its car, and with no task of another one', () => {
    const { household, session } = twoCars();
    const paper = photograph(household, session, 'wren', 'b');
    const move = (...ids: string[]) => household.must('session.move', { session, day: '2026-12-12' as never, tasks: ids.map(item) }).session.id;
    const there = move('wax', 'oil');
    expect(show(household, there).photos).toEqual([]);
    move('dust');
    expect([show(household, session).photos, show(household, there).photos.map((one) => one.paper)]).toEqual([[], [paper]]);
  });

  test('of a step whose task left before goes with the last task too', () => {
    const { household, session } = twoCars();
    const paper = photograph(household, session, 'wren', 'b');
    household.must('work.drop-photo', { session, photo: show(household, session).photos[0]?.id ?? '' });
    household.must('work.photo', { session, car: 'wren', at: { task: 'item/wax', step: 'whole' }, paper });
    household.must('session.release', { session, tasks: [item('wax')], sure: true });
    household.must('session.move', { session, day: '2026-12-12' as never, tasks: [item('dust')] });
    expect(show(household, session).photos).toEqual([]);
    expect(usesOf(household, paper)).toEqual([expect.stringMatching(/^session /)]);
  });

  test('stays among the papers of its car where the session is dropped, and is tied once', () => {
    const { household, session } = twoCars();
    const paper = photograph(household, session, 'wren', 'b');
    household.must('paper.tie', { paper, to: [{ kind: 'car', id: 'wren' }] });
    household.must('session.end', { session, as: 'cancelled', sure: true });
    expect(usesOf(household, paper)).toEqual(['car wren']);
  });
});

describe('a car that leaves with something open', () => {
  const leave = (household: MemoryHousehold, sure = false) => household.call('car.leave', { car: 'wren', how: 'sold', sure });

  test('is asked about while its session is begun, by what was done on it', () => {
    const { household, session } = twoCars();
    expect(leave(household)).toMatchObject({ ok: false, refusal: { code: 'car-leaves-with-open', path: ['sure'], values: { car: 'Wren', what: 'session on 5 Dec 2026, begun' } } });
    household.must('work.tick', { session, of: [{ task: 'item/wax', step: 'whole' }] });
    household.must('work.tick', { session, of: [{ task: 'item/oil', step: 'step-1' }] });
    household.at('09:10:00').must('work.time', { session, task: 'item/dust', run: true });
    photograph(household, session, 'wren', 'b');
    const refused = leave(household);
    expect(refused).toMatchObject({ ok: false, refusal: { values: { what: 'session on 5 Dec 2026, begun (1 ticked, time running, 1 photographed)' } } });
    expect(refused.ok ? '' : sayRefusal(refused.refusal)).toBe('Something of Wren is open: session on 5 Dec 2026, begun (1 ticked, time running, 1 photographed). Write the record of what was done, and call the garage off, before it leaves. If it leaves all the same, what was ticked, timed and read comes into no record; what was found and photographed stays with the car.');
  });

  test('leaves once one is sure: its time ends, its photographs are among its papers, and the others’ work goes on', () => {
    const { household, session } = twoCars();
    const [own, other] = [photograph(household, session, 'wren', 'b'), photograph(household, session, 'pip', 'c')];
    household.at('09:00:00').must('work.time', { session, task: 'item/wax', run: true });
    household.at('09:05:00');
    expect(leave(household, true)).toMatchObject({ ok: true, value: { sessions: { changed: 1, cancelled: 0 } } });
    expect(household.facts().all(spans)).toMatchObject([{ to: at('09:05:00') }]);
    expect(show(household, session)).toMatchObject({ running: null, photos: [{ paper: other }] });
    expect(usesOf(household, own)).toEqual(['car wren']);
  });

  test('leaves without a question where nothing of it is begun', () => {
    const household = twoCars().household;
    household.must('session.end', { session: household.must('sessions.show', {}).sessions[0]?.id ?? '', as: 'cancelled' });
    keep(household, '2026-12-12', 'wax');
    expect(leave(household)).toMatchObject({ ok: true, value: { sessions: { cancelled: 1 } } });
  });

  test('a garage that counts on it is named, and is waited for until it is told', () => {
    const { household, session } = twoCars();
    household.must('session.end', { session, as: 'cancelled' });
    household.must('place.set', { id: 'hill', name: 'Hill Works', kind: 'garage' });
    const [kept] = household.must('session.keep', { sessions: [{ day: '2026-12-12' as never, place: 'hill', tasks: [item('wax'), item('oil')] }] }).sessions;
    const there = kept?.id ?? '';
    household.must('booking.ask', { session: there, askedOn: SESSION_DAY as never, wanted: [{ car: 'wren', text: 'Wax it' }, { car: 'pip', text: 'Oil' }] });
    expect(leave(household)).toMatchObject({ ok: false, refusal: { values: { what: 'Hill Works, asked on 5 Dec 2026' } } });
    household.must('booking.book', { session: there, day: '2026-12-12' as never });
    expect(leave(household)).toMatchObject({ ok: false, refusal: { values: { what: 'Hill Works, booked for 12 Dec 2026' } } });
    expect(leave(household, true).ok).toBe(true);
    const notes = () => household.must('booking.show', { session: there }).notes.map((one) => one.text);
    expect(notes()).toContain('Wren has left the household. Tell Hill Works that it does not come.');
    expect(household.must('car.leaving', { car: 'wren' }).bookings).toMatchObject([{ place: 'Hill Works' }]);
    household.must('booking.drop', { session: there, why: 'cancelled' });
    expect([notes().filter((one) => one.startsWith('Wren')), household.must('car.leaving', { car: 'wren' }).bookings]).toEqual([[], []]);
  });
});
