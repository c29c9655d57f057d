import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { begunHousehold, householdWithSession, SESSION_DAY, sessionOf } from '../work/doing-household.ts';

type CloseCar = RequestOf<'session.close'>['cars'][number];

/** Ticks every step that belongs to a task. */
function tickAll(household: MemoryHousehold, session: string, task: string): void {
  for (const step of household.must('work.show', { session }).steps) if (step.of.some((ref) => ref.task === task)) household.must('work.tick', { session, of: step.of });
}

/** What the closing proposes, as it would be sent. */
function proposed(household: MemoryHousehold, session: string): RequestOf<'session.close'> {
  const closing = household.must('work.closing', { session });
  return {
    session,
    date: closing.date,
    cars: closing.cars.map((car): CloseCar => ({
      car: car.car,
      lines: car.tasks.flatMap(({ task, outcome, minutes, note }) => (outcome === null ? [] : [{ item: task.id, outcome, minutes, note }])),
      lotsUsed: car.lots.map(({ lot, quantity }) => ({ lot, quantity })),
      measured: car.values.flatMap((value) => (value.read.kind === 'measured' ? [{ value: value.id }] : [])),
      followUps: car.tasks.filter((task) => task.outcome !== 'not-done').flatMap((task) => task.followUps.map(({ text, days, distance }) => ({ text, days, distance, item: task.task.id }))),
    })),
    wastes: closing.wastes.filter((one) => one.kept).map(({ name }) => ({ what: name })),
  };
}

/** The oil changed in 50 minutes and the pads measured; nobody got to the polish. */
function worked() {
  const { household, session } = begunHousehold();
  household.at('09:00:00').must('work.time', { session, task: 'item/oil', run: true });
  tickAll(household, session, 'item/oil');
  const at = { task: 'item/oil', step: 'step-2' };
  household.must('work.read', { session, at, read: { kind: 'torque', name: 'Drain plug', typed: { value: 30, unit: 'Nm' } } });
  household.at('09:50:00').must('work.time', { session, task: null, run: false });
  tickAll(household, session, 'item/brakes');
  household.must('work.read', { session, at: { task: 'item/brakes', step: 'step-1' }, read: { kind: 'measured', what: 'pad', name: null, place: 'front-left', typed: { value: 5.5, unit: 'mm' } } });
  const { observation } = household.must('work.find', { session, at: { task: 'item/brakes', step: 'step-2' }, stepText: 'Look at the hoses.', severity: 'soon' });
  return { household, session, observation };
}

describe('the closing of a session is proposed', () => {
  test('by what was ticked, read, timed, found and used', () => {
    const { household, session } = worked();
    const { date, cars, wastes } = household.must('work.closing', { session });
    expect(date).toBe(SESSION_DAY);
    expect(cars[0]?.tasks.map(({ key, ticked, steps, outcome, minutes, note }) => ({ key, told: `${ticked} of ${steps}`, outcome, minutes, note }))).toEqual([
      { key: 'item/oil', told: '6 of 6', outcome: 'done', minutes: 50, note: 'Drain plug 30 N·m' },
      // A look at which something was found is to be watched.
      { key: 'item/brakes', told: '2 of 2', outcome: 'watch', minutes: null, note: '' },
      { key: 'item/polish', told: '0 of 1', outcome: 'not-done', minutes: null, note: '' },
    ]);
    expect(cars[0]?.lots).toMatchObject([{ lot: 'lot-1', quantity: 4, unit: 'litre', where: 'shelf, floor', for: 'Engine oil and filter' }]);
    expect(cars[0]?.lacks.map((one) => one.text)).toEqual(['1 each oil filter is not on the shelf: say what was used, or put it on the shelf first.']);
    expect(wastes).toEqual([{ what: 'used-oil', name: 'Used oil', kept: true, tasks: ['item/oil'] }, { what: 'oil-filter', name: 'Oil filter', kept: true, tasks: ['item/oil'] }]);
  });

  test('steps left out stand in the note with their reason', () => {
    const { household, session } = begunHousehold(['oil']);
    tickAll(household, session, 'item/oil');
    household.must('work.tick', { session, of: [{ task: 'item/oil', step: 'reset: Set the reminder back' }], as: 'left-out', note: 'no reminder in this car' });
    expect(household.must('work.closing', { session }).cars[0]?.tasks[0]?.note).toBe('left out: Set the reminder back (no reminder in this car)');
  });

  test.each<[string, (household: MemoryHousehold) => void, string]>([
    ['taken away', (household) => void household.must('sheet.remove', { item: 'oil' }), 'Drain plug 30 N·m; left out: a step that is no longer on the sheet (bolt seized)'],
    ['written anew', (household) => void household.must('sheet.set', { item: 'oil', steps: [{ text: 'Another way.' }] }), 'Drain plug 30 N·m; left out: a step that is no longer on the sheet (bolt seized)'],
    ['left as it is', () => undefined, 'Drain plug 30 N·m; left out: Take the undertray off (bolt seized)'],
  ])('torques and reasons stand in the note though the sheet was %s meanwhile', (_how, changed, note) => {
    const { household, session } = begunHousehold(['oil']);
    household.must('work.tick', { session, of: [{ task: 'item/oil', step: 'step-1' }], as: 'left-out', note: 'bolt seized' });
    household.must('work.read', { session, at: { task: 'item/oil', step: 'step-2' }, read: { kind: 'torque', name: 'Drain plug', typed: { value: 30, unit: 'Nm' } } });
    changed(household);
    expect(household.must('work.closing', { session }).cars[0]?.tasks[0]?.note).toBe(note);
  });

  test('with the day of the last tick, or that of the session where nothing was ticked', () => {
    const { household, session } = begunHousehold(['oil']);
    household.on('2026-12-07');
    expect(household.must('work.closing', { session }).date).toBe(SESSION_DAY);
    tickAll(household, session, 'item/oil');
    expect(household.on('2026-12-09').must('work.closing', { session }).date).toBe('2026-12-07');
  });
});

describe('a session is closed', () => {
  test('into one record: its reading, minutes, lots, measurements, what was found; windows move, the shelf is less, follow-ups stand', () => {
    const { household, session, observation } = worked();
    const due = (id: string) => household.must('due.show', {}).cars[0]?.windows.find((one) => one.item === id);
    expect(due('oil')?.state).toBe('unknown');
    const request = proposed(household, session);
    const cars = request.cars.map((car) => ({ ...car, reading: { value: 45_400, unit: 'km' as const }, costs: [{ kind: 'consumables' as const, text: 'rags', amountMinor: 350 }] }));
    const closed = household.must('session.close', { ...request, cars });
    const record = closed.records[0]?.record;
    expect(record).toMatchObject({ car: 'pip', date: SESSION_DAY, place: 'home', title: 'Engine oil and filter, Brake pads and discs, Polish', lotsUsed: [{ lot: 'lot-1', quantity: 4 }] });
    expect(record?.lines.map(({ item, outcome, minutes, note }) => [item, outcome, minutes, note])).toEqual([['oil', 'done', 50, 'Drain plug 30 N·m'], ['brakes', 'watch', null, ''], ['polish', 'not-done', null, '']]);
    expect(closed.session.state).toBe('done');
    expect(closed.left).toEqual([{ kind: 'item', id: 'polish' }]);
    expect(closed.measurements).toMatchObject([{ what: 'pad', place: 'front-left', value: 5.5, reading: record?.reading }]);
    expect(closed.followUps).toMatchObject([{ car: 'pip', item: 'oil', text: 'Level once more', dueOn: '2026-12-06', doneOn: null }]);
    expect(closed.wastes).toMatchObject([{ what: 'Used oil', since: SESSION_DAY }, { what: 'Oil filter', since: SESSION_DAY }]);
    expect(closed.observations.find((one) => one.id === observation.id)).toMatchObject({ record: record?.id, recheckOn: '2027-01-05', text: 'Something seen at “Look at the hoses.”' });
    // Twelve months and 15 000 km on from the day and the reading; 5 litres less 4.
    expect(due('oil')).toMatchObject({ state: 'ahead', latest: '2027-12-05' });
    expect(due('polish')?.state).toBe('unknown');
    expect(household.must('parts.show', {}).shelf.find((one) => one.lot.id === 'lot-1')?.left).toBe(1);
    expect(household.must('sessions.show', {}).sessions).toEqual([]);
  });

  test('on another day than it was planned for, it stands on that day and says whence', () => {
    const { household, session } = begunHousehold(['oil']);
    household.on('2026-12-07');
    tickAll(household, session, 'item/oil');
    expect(household.must('session.close', proposed(household, session)).session).toMatchObject({ day: '2026-12-07', movedFrom: { day: SESSION_DAY, place: 'home' } });
  });

  test('and says what time it took, of what was not done and of what was recorded by hand as well', () => {
    const { household, session } = begunHousehold();
    household.at('09:00:00').must('work.time', { session, task: 'item/polish', run: true });
    household.at('09:25:00').must('work.time', { session, task: 'item/brakes', run: true });
    household.at('09:40:00').must('work.time', { session, task: 'item/oil', run: true });
    household.at('09:40:20').must('work.time', { session, task: null, run: false });
    household.at('09:50:00').must('record.add', { car: 'pip', lines: [{ item: 'brakes', outcome: 'good' }] });
    household.at('10:00:00');
    expect(household.must('work.closing', { session }).cars[0]?.recorded.map((one) => one.said.text)).toEqual([
      'Brake pads and discs is recorded already, on 5 Dec 2026: it is not written again. The time of this session has 15 min for it; amend that record where they are missing.',
    ]);
    const before = household.must('work.show', { session }).spent.map(({ key, minutes, done }) => [key, minutes, done]);
    household.must('session.close', { session, date: SESSION_DAY as never, cars: [{ car: 'pip', lines: [{ item: 'oil' }, { item: 'polish', outcome: 'not-done' }] }] });
    expect(before).toEqual(household.must('work.show', { session }).spent.map(({ key, minutes, done }) => [key, minutes, done]));
    expect(before.sort()).toEqual([['item/brakes', 15, true], ['item/polish', 25, false]]);
  });

  test('on a day before the work was begun, or long before it was planned, only where one is sure', () => {
    const begun = begunHousehold(['oil']);
    const lines = { cars: [{ car: 'pip', lines: [{ item: 'oil' }] }] };
    const close = ({ household, session }: typeof begun, date: string, sure?: boolean) => household.call('session.close', { session, date: date as never, ...lines, ...(sure === undefined ? {} : { sure }) });
    expect(close(begun, '2026-12-04')).toMatchObject({ refusal: { code: 'closed-before-work', path: ['sure'], values: { date: '2026-12-04', from: SESSION_DAY } } });
    expect(close(begun, '2026-12-04', true)).toMatchObject({ ok: true });
    // From paper: planned on 25 November, and a month before that.
    const planned = () => {
      const household = householdWithSession(['oil']).on(SESSION_DAY);
      return { household, session: sessionOf(household) };
    };
    expect(close(planned(), '2026-10-24')).toMatchObject({ refusal: { code: 'closed-before-work', values: { from: '2026-10-25' } } });
    expect(close(planned(), '2026-10-25')).toMatchObject({ ok: true });
  });

  test('ends the time that still runs', () => {
    const { household, session } = begunHousehold(['oil']);
    household.at('09:00:00').must('work.time', { session, task: 'item/oil', run: true });
    tickAll(household, session, 'item/oil');
    household.at('09:30:00').must('session.close', proposed(household, session));
    household.at('10:00:00');
    expect(household.must('work.show', { session }).running).toBeNull();
  });

  test('without having been begun: who works from paper closes from memory of the day', () => {
    const household = householdWithSession(['oil']);
    const session = sessionOf(household);
    household.on(SESSION_DAY);
    const closed = household.must('session.close', { session, cars: [{ car: 'pip', lines: [{ item: 'oil', minutes: 55 }] }] });
    expect(closed.records[0]?.record).toMatchObject({ date: SESSION_DAY, lines: [{ item: 'oil', outcome: 'done', minutes: 55 }] });
  });

  test.each<[string, string, (request: RequestOf<'session.close'>) => RequestOf<'session.close'>, readonly (string | number)[]]>([
    ['nothing-done', 'nothing at all was done', (request) => ({ ...request, cars: [{ car: 'pip', lines: [{ item: 'oil', outcome: 'not-done' }] }] }), ['cars']],
    ['nothing-done-on-car', 'a reading without anything done', (request) => ({ ...request, cars: [{ car: 'pip', lines: [], reading: { value: 45_100, unit: 'km' } }] }), ['cars', 0, 'reading']],
    ['car-not-in-session', 'a car told twice', (request) => ({ ...request, cars: [...request.cars, ...request.cars] }), ['cars', 1, 'car']],
    ['date-in-future', 'a day to come', (request) => ({ ...request, date: '2026-12-06' as never }), ['date']],
    ['unknown-step-value', 'a value that was not read in it', (request) => ({ ...request, cars: request.cars.map((car) => ({ ...car, measured: [{ value: 'none' }] })) }), ['cars', 0, 'measured', 0]],
    ['task-not-in-session', 'an obligation that is not of it', (request) => ({ ...request, cars: request.cars.map((car) => ({ ...car, met: [{ obligation: 'test' }] })) }), ['cars', 0, 'met']],
    ['lot-used-up', 'more than the shelf held', (request) => ({ ...request, cars: request.cars.map((car) => ({ ...car, lotsUsed: [{ lot: 'lot-1', quantity: 6 }] })) }), ['cars', 0, 'lotsUsed']],
  ])('not at all where it is refused: %s, %s', (code, _why, changed, path) => {
    const { household, session } = worked();
    const before = household.entries.length;
    expect(household.call('session.close', changed(proposed(household, session)))).toMatchObject({ ok: false, refusal: { code, path } });
    expect(household.entries).toHaveLength(before);
    expect(household.must('sessions.show', {}).sessions).toHaveLength(1);
  });

  test('with two cars that take of one lot, each sees what the other took', () => {
    const { household, session } = begunHousehold(['oil']);
    household.must('car.add', { id: 'wren', name: 'Wren', power: 'petrol', year: 2000, use: 'hobby' });
    household.must('item.add', { id: 'wren-oil', car: 'wren', name: 'Engine oil', interval: { repeat: { months: 12, distance: null } }, needs: [{ specification: 'oil-a', quantity: 3 }] });
    household.must('session.keep', { sessions: [{ day: SESSION_DAY as never, place: 'home', tasks: [{ kind: 'item', id: 'wren-oil' }] }] });
    const of = (car: string, item: string, quantity: number): CloseCar => ({ car, lines: [{ item }], lotsUsed: [{ lot: 'lot-1', quantity }] });
    expect(household.call('session.close', { session, cars: [of('pip', 'oil', 3), of('wren', 'wren-oil', 3)] })).toMatchObject({ ok: false, refusal: { code: 'lot-used-up', path: ['cars', 1, 'lotsUsed'] } });
    expect(household.must('session.close', { session, cars: [of('pip', 'oil', 3), of('wren', 'wren-oil', 2)] }).records).toHaveLength(2);
  });

  test('a test passed at the garage renews its obligation', () => {
    const { household } = begunHousehold(['oil']);
    household.must('place.set', { id: 'garage', name: 'the corner', kind: 'garage' });
    household.must('obligation.add', { id: 'test', car: 'pip', kind: 'roadworthiness-test', lastValidDay: '2026-12-20' as never, months: 12, keepsDate: true });
    household.must('session.keep', { sessions: [{ day: SESSION_DAY as never, place: 'garage', tasks: [{ kind: 'obligation', id: 'test' }] }] });
    const session = household.must('sessions.show', {}).sessions.find((one) => one.place === 'garage')?.id ?? '';
    const closed = household.must('session.close', { session, cars: [{ car: 'pip', met: [{ obligation: 'test', paidMinor: 6000, reference: 'sheet 12' }] }] });
    // Passed within the month before: the new last day keeps the twentieth.
    expect(closed.renewals).toMatchObject([{ on: SESSION_DAY, lastValidDay: '2027-12-20', paidMinor: 6000 }]);
    expect([closed.records, closed.left]).toEqual([[], []]);
  });
});
