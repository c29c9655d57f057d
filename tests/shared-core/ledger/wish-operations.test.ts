import { describe, expect, test } from 'vitest';
import { serviceItems } from '../../../shared-core/care/service-item.ts';
import { openWishes, wishState } from '../../../shared-core/ledger/wish-state.ts';
import { wishes } from '../../../shared-core/ledger/wish.ts';
import { sessions } from '../../../shared-core/sessions/session.ts';
import { openTestHost } from '../../host/open-test-host.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { standing, wishFor, wishHousehold } from './wish-household.ts';

const stateOf = (household: MemoryHousehold, id: string) => wishState(household.facts(), standing(household, id));
const code = (reply: { readonly ok: boolean; readonly refusal?: { readonly code: string } }) => (reply.ok ? 'ok' : reply.refusal?.code);
const ranks = (household: MemoryHousehold) => openWishes(household.facts()).map((wish) => `${wish.rank} ${wish.id}`);
/** A lot of springs on the shelf. */
const lot = (household: MemoryHousehold, id: string, part = 'sp', quantity = 1) => household.must('lot.set', { id, part, quantity, receivedOn: day('2026-11-20'), paidMinor: 11_000 });
/** Pip's filter, planned at home for 5 December. */
function keptSession(household: MemoryHousehold, place = 'home') {
  household.must('item.add', { id: 'filter', car: 'pip', name: 'filter', history: 'never-done', interval: { repeat: { months: 72, distance: null } }, needs: [{ specification: 'filter-pip', quantity: 1 }] });
  return household.must('session.keep', { sessions: [{ day: day('2026-12-07'), place, tasks: [{ kind: 'item', id: 'filter' }] }] }).sessions[0]?.id ?? '';
}
const done = (household: MemoryHousehold, item: string, more = {}) => household.must('record.add', { id: `did-${item}`, car: 'pip', date: day('2026-11-25'), lines: [{ name: 'springs', item }], ...more });

describe('a wish', () => {
  test('is wanted least at first; only the fields given change', () => {
    const household = wishHousehold();
    wishFor(household, 'a', ['springs'], { minutes: 120 });
    wishFor(household, 'b', ['radio']);
    expect(household.must('wish.set', { id: 'a', note: 'firmer' }).set).toMatchObject({ name: 'a', rank: 1, minutes: 120, note: 'firmer', addedOn: '2026-11-25', item: null, lots: [] });
    expect(ranks(household)).toEqual(['1 a', '2 b']);
  });

  test.each([
    { case: 'of no car', request: { name: 'x' }, refused: 'wish-of-which-car' },
    { case: 'of nothing', request: { car: 'pip' }, refused: 'wish-of-what' },
    { case: 'of a car that is not there', request: { car: 'nobody', name: 'x' }, refused: 'unknown-car' },
    { case: 'by a specification that is not there', request: { car: 'pip', name: 'x', needs: [{ specification: 'nothing', quantity: 1 }] }, refused: 'unknown-specification' },
    { case: 'with a need twice', request: { car: 'pip', name: 'x', needs: [{ specification: 'radio', quantity: 1 }, { specification: 'radio', quantity: 2 }] }, refused: 'need-twice' },
  ])('$case is refused', ({ request, refused }) => expect(code(wishHousehold().call('wish.set', request))).toBe(refused));

  test('all are ranked in one step, from 1 on; a list that lacks one or names one twice is refused', () => {
    const household = wishHousehold();
    for (const id of ['a', 'b', 'c']) wishFor(household, id, ['radio']);
    household.must('wish.rank', { wishes: ['c', 'a', 'b'] });
    expect(ranks(household)).toEqual(['1 c', '2 a', '3 b']);
    expect([['c', 'a'], ['c', 'c', 'a', 'b'], ['c', 'a', 'b', 'x']].map((list) => code(household.call('wish.rank', { wishes: list })))).toEqual(['wish-not-ranked', 'wish-ranked-twice', 'unknown-wish']);
    household.must('wish.let-go', { wish: 'a' });
    household.must('wish.rank', { wishes: ['b', 'c'] });
    expect([ranks(household), code(household.call('wish.rank', { wishes: ['a', 'b', 'c'] }))]).toEqual([['1 b', '2 c'], 'wish-let-go']);
  });

  test('let go, its parts are free; wanted again, it is wanted least', () => {
    const household = wishHousehold();
    wishFor(household, 'a', ['springs']);
    wishFor(household, 'b', ['radio']);
    lot(household, 'lot');
    household.must('wish.put-aside', { wish: 'a', lots: ['lot'] });
    expect(code(household.call('wish.remove', { wish: 'a' }))).toBe('wish-has-lots');
    household.must('wish.let-go', { wish: 'a' });
    expect([stateOf(household, 'a'), standing(household, 'a').lots, code(household.call('wish.set', { id: 'a', note: 'x' })), code(household.call('wish.let-go', { wish: 'a' }))]).toEqual(['let-go', [], 'wish-let-go', 'wish-let-go']);
    household.must('wish.want-again', { wish: 'a' });
    expect([ranks(household), code(household.call('wish.want-again', { wish: 'a' }))]).toEqual([['2 b', '3 a'], 'wish-not-let-go']);
    household.must('wish.remove', { wish: 'a' });
    expect([household.facts().get(wishes, 'a'), code(household.call('wish.remove', { wish: 'a' }))]).toEqual([null, 'unknown-wish']);
  });
});

describe('parts put aside', () => {
  test('serve one wish, and only one that needs them', () => {
    const household = wishHousehold();
    wishFor(household, 'a', ['springs']);
    wishFor(household, 'b', ['springs', 'radio']);
    lot(household, 'lot');
    lot(household, 'oil', 'can', 5);
    household.must('wish.put-aside', { wish: 'a', lots: ['lot'] });
    expect([['lot'], ['oil'], ['none'], ['lot', 'lot']].map((lots, at) => code(household.call('wish.put-aside', { wish: at === 3 ? 'a' : 'b', lots })))).toEqual(['lot-of-other-wish', 'lot-meets-no-wish', 'unknown-lot', 'lot-aside-twice']);
    expect(code(household.call('wish.set', { id: 'a', needs: [{ specification: 'radio', quantity: 1 }] }))).toBe('lot-meets-no-wish');
    household.must('wish.put-aside', { wish: 'a', lots: [] });
    household.must('wish.put-aside', { wish: 'b', lots: ['lot'] });
    household.must('lot.use', { lot: 'lot', quantity: 1 });
    household.must('wish.put-aside', { wish: 'b', lots: [] });
    expect(code(household.call('wish.put-aside', { wish: 'b', lots: ['lot'] }))).toBe('lot-empty');
  });

  test('are not taken from what is late, unless the shelf has enough for both', () => {
    const household = wishHousehold();
    household.must('item.add', { id: 'oil', car: 'alder', name: 'oil', history: 'never-done', interval: { repeat: { months: 12, distance: null } }, needs: [{ specification: 'oil', quantity: 4 }] });
    household.must('wish.set', { id: 'a', car: 'pip', name: 'a', needs: [{ specification: 'oil', quantity: 5 }] });
    lot(household, 'first', 'can', 5);
    expect(household.call('wish.put-aside', { wish: 'a', lots: ['first'] })).toMatchObject({ ok: false, refusal: { code: 'lot-needed-by-late', values: { task: 'Alder: oil' } } });
    lot(household, 'second', 'can', 5);
    expect(code(household.call('wish.put-aside', { wish: 'a', lots: ['first'] }))).toBe('ok');
  });
});

describe('a wish that is planned', () => {
  test('is a task done once, that is neither late nor due, nor unknown, nor asked about', () => {
    const household = wishHousehold();
    household.must('reading.record', { car: 'pip', value: 9000, date: day('2026-11-01') });
    wishFor(household, 'a', ['springs'], { minutes: 120, access: ['wheels off'] });
    const { item } = household.must('wish.plan', { wish: 'a' });
    expect(item).toMatchObject({ car: 'pip', name: 'a', place: 'home', minutes: 120, access: ['wheels off'], interval: { first: { months: null, distance: null }, repeat: { months: null, distance: null } } });
    expect(stateOf(household, 'a')).toBe('planned');
    const lane = household.must('yard.show', {}).lanes.find((one) => one.id === 'pip');
    expect(lane?.windows).toEqual([]);
    expect(household.must('intake.show', { car: 'pip' }).counts).toMatchObject({ items: 0, questions: 0, unknown: 0 });
    expect(household.must('car.show', { car: 'pip' }).items.map((one) => [one.item.id, one.severe])).toEqual([[item.id, null]]);
    expect(household.must('reminders.show', {})).toMatchObject({ reminders: [] });
    // Nobody can take an interval away from what has one.
    household.must('item.add', { id: 'filter', car: 'pip', name: 'filter', interval: { repeat: { months: 72, distance: null } } });
    const empty = { months: null, distance: null };
    expect([household.call('item.change', { id: 'filter', interval: { first: empty, repeat: empty } }), household.call('item.add', { car: 'pip', name: 'x', interval: { repeat: empty } })].map(code)).toEqual(['interval-empty', 'interval-empty']);
  });

  test('changes with its task; is neither let go nor removed nor given to another car', () => {
    const household = wishHousehold();
    wishFor(household, 'a', ['springs'], { minutes: 120 });
    const { item } = household.must('wish.plan', { wish: 'a' });
    household.must('item.change', { id: item.id, minutes: 200 });
    household.must('wish.set', { id: 'a', name: 'firmer springs', needs: [{ specification: 'springs', quantity: 2 }] });
    expect(household.facts().get(serviceItems, item.id)).toMatchObject({ name: 'firmer springs', needs: [{ specification: 'springs', quantity: 2 }], minutes: 200 });
    expect([household.call('wish.let-go', { wish: 'a' }), household.call('wish.remove', { wish: 'a' }), household.call('wish.set', { id: 'a', car: 'alder' })].map(code)).toEqual(['wish-planned', 'wish-planned', 'wish-planned']);
    expect(code(household.call('wish.plan', { wish: 'a' }))).toBe('wish-planned-already');
  });

  test('joins a session that is kept, at its own place, and leaves it again', () => {
    const household = wishHousehold();
    const session = keptSession(household);
    wishFor(household, 'a', ['springs'], { minutes: 120 });
    wishFor(household, 'g', ['radio'], { place: 'garage' });
    expect(code(household.call('wish.plan', { wish: 'g', session }))).toBe('wish-at-garage');
    const planned = household.must('wish.plan', { wish: 'a', session });
    expect(planned.session?.tasks).toEqual([{ kind: 'item', id: 'filter' }, { kind: 'item', id: planned.item.id }]);
    expect(code(household.call('wish.plan', { wish: 'a', session }))).toBe('task-in-session');
    expect(household.must('sessions.show', {})).toMatchObject({ today: '2026-11-25' });
    household.must('wish.unplan', { wish: 'a' });
    expect([stateOf(household, 'a'), household.facts().get(serviceItems, planned.item.id), household.facts().get(sessions, session)?.tasks, code(household.call('wish.unplan', { wish: 'a' }))]).toEqual(['saving', null, [{ kind: 'item', id: 'filter' }], 'wish-not-planned']);
    // Planned first, it joins later; a session of its own goes with it.
    const again = household.must('wish.plan', { wish: 'a' });
    household.must('session.keep', { sessions: [{ day: day('2026-12-20'), place: 'home', tasks: [{ kind: 'item', id: again.item.id }] }] });
    household.must('wish.unplan', { wish: 'a' });
    expect(household.facts().all(sessions).map((one) => one.day)).toEqual(['2026-12-07']);
  });

  test('a session that is only proposed, or has ended, takes none', () => {
    const household = wishHousehold();
    const session = keptSession(household);
    wishFor(household, 'a', ['springs']);
    household.must('session.end', { session, as: 'cancelled' });
    const proposed = household.must('session.propose', { sessions: [{ day: day('2026-12-09'), place: 'home', tasks: [{ kind: 'item', id: 'filter' }] }] }).sessions[0]?.id ?? '';
    expect([session, proposed, 'none'].map((one) => code(household.call('wish.plan', { wish: 'a', session: one })))).toEqual(['session-ended', 'wish-session-not-kept', 'unknown-session']);
    expect(stateOf(household, 'a')).toBe('saving');
  });

  test.each([
    { what: 'it has a job sheet', hang: (household: MemoryHousehold, item: string) => household.must('sheet.set', { item, steps: [{ text: 'lift it' }] }) },
    { what: 'a work record names it', hang: (household: MemoryHousehold, item: string) => household.must('record.add', { car: 'pip', date: day('2026-11-24'), lines: [{ name: 'springs', item, outcome: 'not-done' }, { name: 'wash' }] }) },
    { what: 'it is said to be worth doing with another task', hang: (household: MemoryHousehold, item: string) => { keptSession(household); household.must('worth-while.set', { when: { kind: 'item', id: 'filter' }, also: { kind: 'item', id: item } }); } },
    { what: 'it has a follow-up', hang: (household: MemoryHousehold, item: string) => household.must('follow-up.add', { car: 'pip', text: 'look', days: 10, item }) },
  ])('is not taken out of the plan where $what', ({ what, hang }) => {
    const household = wishHousehold();
    wishFor(household, 'a', ['springs']);
    hang(household, household.must('wish.plan', { wish: 'a' }).item.id);
    expect(household.call('wish.unplan', { wish: 'a' })).toMatchObject({ ok: false, refusal: { code: 'wish-task-used', values: { what } } });
  });

  test('has come true when a record says that it was done, and not while it says it was not', () => {
    const household = wishHousehold();
    wishFor(household, 'a', ['springs']);
    const { item } = household.must('wish.plan', { wish: 'a' });
    household.must('record.add', { car: 'pip', date: day('2026-11-24'), lines: [{ name: 'springs', item: item.id, outcome: 'not-done' }] });
    expect(stateOf(household, 'a')).toBe('planned');
    done(household, item.id);
    expect(stateOf(household, 'a')).toBe('fulfilled');
    expect([household.call('wish.set', { id: 'a', note: 'x' }), household.call('wish.unplan', { wish: 'a' }), household.call('wish.let-go', { wish: 'a' }), household.call('wish.remove', { wish: 'a' }), household.call('wish.put-aside', { wish: 'a', lots: [] })].map(code)).toEqual(['wish-fulfilled', 'wish-fulfilled', 'wish-fulfilled', 'wish-planned', 'wish-fulfilled']);
    const lane = household.must('yard.show', {}).lanes.find((one) => one.id === 'pip');
    expect(lane?.windows).toEqual([]);
  });
});

test('what was planned is undone in one step, and the journal still holds', async () => {
  const host = openTestHost();
  await host.must('household.start', { unit: 'km' });
  await host.must('car.add', { id: 'pip', name: 'Pip' });
  await host.must('wish.set', { id: 'a', car: 'pip', name: 'a radio' });
  const planned = await host.must('wish.plan', { wish: 'a' });
  const kept = await host.must('session.keep', { sessions: [{ day: day('2026-12-20'), place: 'home', tasks: [{ kind: 'item', id: planned.item.id }] }] });
  expect((await host.call('entry.withdraw', { entries: [...planned.undo] })).ok).toBe(false);
  const unplanned = await host.must('wish.unplan', { wish: 'a' });
  await host.must('entry.withdraw', { entries: [...unplanned.undo] });
  expect((await host.must('sessions.show', {})).sessions.map((one) => one.tasks.map((task) => task.name))).toEqual([['a radio']]);
  await host.must('entry.withdraw', { entries: [...kept.undo] });
  await host.must('entry.withdraw', { entries: [...planned.undo] });
  expect((await host.must('car.show', { car: 'pip' })).items).toEqual([]);
  expect((await host.must('wish.plan', { wish: 'a' })).wish.item).not.toBeNull();
  expect(await host.must('household.examine', {})).toMatchObject({ faults: [] });
});
