import { describe, expect, test } from 'vitest';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { lineNote, recordNote } from '../../../shared-core/views/closing-note.ts';
import { spans } from '../../../shared-core/work/doing.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { begunHousehold, SESSION_DAY } from '../work/doing-household.ts';

const closing = (household: MemoryHousehold, session: string) => household.must('work.closing', { session });
const task = (household: MemoryHousehold, session: string, key: string) => closing(household, session).cars.flatMap((car) => car.tasks).find((one) => one.key === key);
const stepsOf = (household: MemoryHousehold, session: string, key: string) => household.must('work.show', { session }).steps.filter((step) => step.of.some((ref) => ref.task === key));
const tick = (household: MemoryHousehold, session: string, of: RequestOf<'work.tick'>['of'], as: 'done' | 'left-out' = 'done') => household.must('work.tick', { session, of, as, note: as === 'done' ? '' : 'no time' });
const tickAll = (household: MemoryHousehold, session: string, key: string, as: 'done' | 'left-out' = 'done') => stepsOf(household, session, key).forEach((step) => tick(household, session, step.of, as));

describe('how a task went is proposed', () => {
  test('as done only where every step of its own is ticked as done; one of several leaves it to the keeper, with nothing off the shelf', () => {
    const { household, session } = begunHousehold(['oil']);
    expect(task(household, session, 'item/oil')).toMatchObject({ outcome: 'not-done', ticked: 0, leftOut: 0 });
    tick(household, session, [{ task: 'item/oil', step: 'step-1' }]);
    const some = closing(household, session);
    expect(some.cars[0]?.tasks[0]).toMatchObject({ outcome: null, ticked: 1, steps: 6 });
    expect([some.cars[0]?.lots, some.cars[0]?.lacks, some.wastes]).toEqual([[], [], []]);
    // Should the keeper say that it was done, what it takes is there to be looked over.
    expect(some.cars[0]?.otherwise.lots).toMatchObject([{ task: 'item/oil', lot: 'lot-1', quantity: 4 }]);
    expect(some.otherwise).toMatchObject([{ what: 'used-oil', tasks: ['item/oil'] }, { what: 'oil-filter', tasks: ['item/oil'] }]);
    tickAll(household, session, 'item/oil');
    const all = closing(household, session);
    expect(all.cars[0]?.tasks[0]?.outcome).toBe('done');
    expect(all.cars[0]?.lots).toMatchObject([{ task: 'item/oil', lot: 'lot-1', quantity: 4 }]);
    expect([all.cars[0]?.otherwise, all.otherwise]).toEqual([{ lots: [], lacks: [] }, []]);
  });

  test('is for the keeper to say where its ticks stand on steps that are gone', () => {
    const { household, session } = begunHousehold(['brakes']);
    tickAll(household, session, 'item/brakes');
    household.must('sheet.set', { item: 'brakes', steps: [{ text: 'Look at the lines.' }, { text: 'Look at the drums.' }] });
    expect(task(household, session, 'item/brakes')).toMatchObject({ outcome: null, ticked: 0 });
  });

  test('on the day of what was read last, where that is after the last tick', () => {
    const { household, session } = begunHousehold(['brakes']);
    tick(household, session, [{ task: 'item/brakes', step: 'step-2' }]);
    expect(closing(household, session).date).toBe(SESSION_DAY);
    household.on('2026-12-08').at('10:00:00').must('work.read', { session, at: { task: 'item/brakes', step: 'step-1' }, read: { kind: 'measured', what: 'pad', name: null, place: 'front-left', typed: { value: 5.5, unit: 'mm' } } });
    expect(closing(household, session).date).toBe('2026-12-08');
  });

  test('as not done where all of it was left out, and as nobody can tell where one step was', () => {
    const { household, session } = begunHousehold(['oil', 'brakes']);
    tickAll(household, session, 'item/oil', 'left-out');
    expect(task(household, session, 'item/oil')).toMatchObject({ outcome: 'not-done', ticked: 0, leftOut: 6 });
    tickAll(household, session, 'item/brakes');
    expect(task(household, session, 'item/brakes')?.outcome).toBe('good');
    tick(household, session, [{ task: 'item/brakes', step: 'step-2' }], 'left-out');
    expect(task(household, session, 'item/brakes')).toMatchObject({ outcome: null, ticked: 1, leftOut: 1 });
  });

  test('as nobody can tell where something was read at a step that is not ticked', () => {
    const { household, session } = begunHousehold(['brakes']);
    household.must('work.read', { session, at: { task: 'item/brakes', step: 'step-1' }, read: { kind: 'measured', what: 'pad', name: null, place: 'front-left', typed: { value: 5.5, unit: 'mm' } } });
    expect(task(household, session, 'item/brakes')?.outcome).toBeNull();
  });

  test('by its own steps alone: an access that two tasks open in the same words says nothing of either', () => {
    const { household, session } = begunHousehold(['oil', 'brakes']);
    household.must('sheet.set', { item: 'brakes', steps: [{ text: 'Take the undertray off.', access: { name: 'undertray', way: 'open' } }, { text: 'Look at the hoses.' }] });
    const shared = household.must('work.show', { session }).steps.find((step) => step.of.length === 2);
    expect(shared?.text).toBe('Take the undertray off.');
    tick(household, session, shared?.of ?? []);
    expect([task(household, session, 'item/oil')?.outcome, task(household, session, 'item/brakes')?.outcome]).toEqual(['not-done', 'not-done']);
    tickAll(household, session, 'item/brakes');
    expect([task(household, session, 'item/oil')?.outcome, task(household, session, 'item/brakes')?.outcome]).toEqual(['not-done', 'good']);
  });
});

test('a follow-up of the same words that is open on the car is not proposed again; one that is ticked or of another car is', () => {
  const { household, session } = begunHousehold(['oil']);
  const proposed = () => task(household, session, 'item/oil')?.followUps.map((one) => one.text);
  household.must('car.add', { id: 'wren', name: 'Wren' });
  household.must('follow-up.add', { car: 'wren', text: 'Level once more', days: 3 });
  expect(proposed()).toEqual(['Level once more']);
  const { followUp } = household.must('follow-up.add', { car: 'pip', text: 'level once more', days: 3 });
  expect(proposed()).toEqual([]);
  household.must('follow-up.done', { followUp: followUp.id });
  expect(proposed()).toEqual(['Level once more']);
});

describe('what is taken off the shelf is proposed', () => {
  test('over two cars from one shelf, once the day has passed too: what one took the other cannot', () => {
    const { household } = begunHousehold(['oil']);
    household.must('car.add', { id: 'wren', name: 'Wren', power: 'petrol', year: 2000, use: 'hobby' });
    household.must('item.add', { id: 'wren-oil', car: 'wren', name: 'Engine oil', interval: { repeat: { months: 12, distance: null } }, needs: [{ specification: 'oil-a', quantity: 4 }] });
    household.must('session.keep', { sessions: [{ day: SESSION_DAY as never, place: 'home', tasks: [{ kind: 'item', id: 'wren-oil' }] }] });
    const session = household.must('sessions.show', {}).sessions[0]?.id ?? '';
    tickAll(household, session, 'item/oil');
    tickAll(household, session, 'item/wren-oil');
    household.on('2026-12-07');
    const taken = closing(household, session).cars.map((car) => [car.car, car.lots.map(({ lot, quantity }) => [lot, quantity]), car.lacks.map((one) => one.text)]);
    // By hand: 5 litres, 4 of them to the first; 1 is left for the second, which lacks 3.
    expect(taken).toEqual([
      ['pip', [['lot-1', 4]], ['1 each oil filter is not on the shelf: say what was used, or put it on the shelf first.']],
      ['wren', [['lot-1', 1]], ['3 litre oil A is not on the shelf: say what was used, or put it on the shelf first.']],
    ]);
  });

  test('never from what came after the day of the work', () => {
    const { household, session } = begunHousehold(['oil']);
    tickAll(household, session, 'item/oil');
    household.on('2026-12-07').must('lot.set', { id: 'lot-1', part: 'can', quantity: 5, receivedOn: '2026-12-06' as never });
    expect(closing(household, session)).toMatchObject({ date: SESSION_DAY, cars: [{ lots: [] }] });
  });
});

describe('notes are proposed', () => {
  const why = 'the plug is round and would not come out whatever was tried with it, so it waits for the garage';

  test('whole: what does not stand in the note of the line stands in that of the record, and none is cut', () => {
    const { household, session } = begunHousehold(['oil']);
    const steps = Array.from({ length: 12 }, (_, at) => ({ text: `Step number ${at + 1}, which has a long sentence to say` }));
    household.must('sheet.set', { item: 'oil', steps });
    for (const step of stepsOf(household, session, 'item/oil')) household.must('work.tick', { session, of: step.of, as: 'left-out', note: why });
    const car = closing(household, session).cars[0];
    const line = car?.tasks[0]?.note ?? '';
    expect(line.length).toBeLessThanOrEqual(500);
    expect(`${line}\n${car?.note ?? ''}`.match(/waits for the garage\)/g)).toHaveLength(stepsOf(household, session, 'item/oil').length);
    expect(car?.note).toMatch(/^Engine oil and filter: left out: Step number \d+/);
  });

  test('beyond what a record holds the rest is counted', () => {
    const pieces = Array.from({ length: 60 }, (_, at) => `${at} ${'x'.repeat(97)}`);
    const { note, rest } = lineNote(pieces);
    expect([note.split('; '), rest]).toEqual([pieces.slice(0, 4), pieces.slice(4)]);
    const whole = recordNote([{ about: 'Oil', pieces: rest }]).split('\n');
    expect(whole.join('\n').length).toBeLessThanOrEqual(4000);
    expect(whole.at(-1)).toBe(`and ${rest.length - whole.length + 1} more, in the steps of the session`);
    expect(whole.slice(0, -1).every((line) => line.endsWith('x'.repeat(97)))).toBe(true);
  });

  test('a step is cut between characters, never inside one', () => {
    const { household, session } = begunHousehold(['polish']);
    household.must('sheet.set', { item: 'polish', steps: [{ text: `${'a'.repeat(59)}\u{1F697}${'b'.repeat(20)}` }] });
    const [step] = stepsOf(household, session, 'item/polish');
    household.must('work.tick', { session, of: step?.of ?? [], as: 'left-out', note: 'x' });
    expect(task(household, session, 'item/polish')?.note.isWellFormed()).toBe(true);
  });

  test('with the time of what several tasks share, which is no task\'s own', () => {
    const { household, session } = begunHousehold(['oil', 'brakes']);
    household.at('09:00:00').must('work.time', { session, task: null, run: true });
    household.at('09:12:00').must('work.time', { session, task: 'item/oil', run: true });
    household.at('09:42:00').must('work.time', { session, task: null, run: false });
    expect(task(household, session, 'item/oil')?.minutes).toBe(30);
    expect(closing(household, session).cars[0]?.note).toBe('what several tasks of the session share: 12 min');
  });
});

describe('minutes are proposed', () => {
  const leftAlone = () => {
    const { household, session } = begunHousehold(['oil', 'polish']);
    household.at('20:00:00').must('work.time', { session, task: 'item/oil', run: true });
    household.at('20:40:00');
    tick(household, session, [{ task: 'item/oil', step: 'step-1' }]);
    return { household, session };
  };

  // By hand: 40 minutes to the tick; from there to 21:00 of the next day 24 h 20 min, and four days more.
  test.each([
    { case: 'the next day', on: '2026-12-06', ranOn: 1460 },
    { case: 'five days later', on: '2026-12-10', ranOn: 1460 + 4 * 1440 },
  ])('to the last sign of work where time was left running, and what ran on is said: closed $case', ({ on, ranOn }) => {
    const { household, session } = leftAlone();
    household.on(on).at('21:00:00');
    expect(task(household, session, 'item/oil')?.minutes).toBe(40);
    expect(closing(household, session).ranOn).toEqual({ name: 'Engine oil and filter', after: `${SESSION_DAY}T20:40:00.000Z`, minutes: ranOn });
    household.must('session.close', { session, date: SESSION_DAY as never, cars: [{ car: 'pip', lines: [{ item: 'oil', minutes: 40 }, { item: 'polish', outcome: 'not-done', note: 'rain' }] }] });
    expect(household.facts().all(spans)).toMatchObject([{ to: `${SESSION_DAY}T20:40:00.000Z` }]);
  });

  test('to now, with nothing said, where work goes on', () => {
    const { household, session } = leftAlone();
    household.at('20:50:00');
    expect([task(household, session, 'item/oil')?.minutes, closing(household, session).ranOn]).toEqual([50, null]);
  });

  test('as none where nobody gave a sign, where nothing ran to speak of, and where no record could hold them', () => {
    const { household, session } = begunHousehold(['oil']);
    household.at('20:00:00').must('work.time', { session, task: 'item/oil', run: true });
    household.on('2026-12-06').at('21:00:00');
    expect(task(household, session, 'item/oil')?.minutes).toBeNull();
    // Said to count, all 25 hours of it; and five days more.
    household.must('work.time', { session, task: null, run: false, upTo: '2026-12-06T21:00:00.000Z' });
    expect(task(household, session, 'item/oil')?.minutes).toBe(1500);
    household.must('work.time', { session, task: 'item/oil', run: true });
    household.on('2026-12-11').at('21:00:00').must('work.time', { session, task: null, run: false, upTo: '2026-12-11T21:00:00.000Z' });
    expect(task(household, session, 'item/oil')?.minutes).toBeNull();
  });

  // By hand: 45 with four in five between 25 and 80 (learned minutes of the start value alone), so twice as far 25 * 25 / 45 = 13.9 and 80 * 80 / 45 = 142.2.
  test('with the bounds beyond which one is asked, where it is known how long it takes', () => {
    const { household, session } = begunHousehold(['oil', 'polish']);
    expect(task(household, session, 'item/oil')?.asks).toEqual({ likely: 45, below: 13, above: 143 });
    expect(task(household, session, 'item/polish')?.asks).toBeNull();
  });
});

test('what was recorded elsewhere meanwhile is said, and what was read at its steps is kept', () => {
  const { household, session } = begunHousehold(['oil', 'brakes']);
  household.must('work.read', { session, at: { task: 'item/oil', step: 'step-2' }, read: { kind: 'torque', name: 'Drain plug', typed: { value: 30, unit: 'Nm' } } });
  household.must('record.add', { car: 'pip', lines: [{ item: 'oil' }] });
  const car = closing(household, session).cars[0];
  expect(car?.tasks.map((one) => one.key)).toEqual(['item/brakes']);
  expect(car?.recorded).toMatchObject([{ key: 'item/oil', on: SESSION_DAY, said: { text: 'Engine oil and filter is recorded already, on 5 Dec 2026: it is not written again.' } }]);
  expect(car?.note).toBe('Engine oil and filter: Drain plug 30 N·m');
});
