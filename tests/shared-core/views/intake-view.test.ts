import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addMonths } from '../../../shared-core/calendar/add-months.ts';
import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { newEntry, type Entry } from '../../../shared-core/journal/entry-kind.ts';
import { paperKept } from '../../../shared-core/records/paper.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

type Item = Partial<RequestOf<'item.add'>>;
type Interval = RequestOf<'item.add'>['interval'];

const RECEIPT = 'a'.repeat(64);

/** Keeps a receipt, as the host does. */
function keepReceipt(household: MemoryHousehold): void {
  const kept = newEntry(paperKept, { id: RECEIPT, name: 'receipt.pdf', media: 'application/pdf', bytes: 9 });
  (household.entries as Entry[]).push({ ...kept, seq: household.entries.length, at: '2026-11-25T12:00:00.000Z' });
}

/** Pip of 2020, bought on 2026-11-01 at 60 000 km and driven about 10 000 km a year before; asked on 2026-11-25. */
function bought(car: Partial<RequestOf<'car.add'>> = {}, readings = true): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2026-11-01'), ...car });
  if (readings) for (const [date, value] of [['2025-11-01', 50_000], ['2026-11-01', 60_000]] as const) household.must('reading.record', { car: 'pip', value, date: day(date) });
  return household;
}

const months = (first: number, repeat = first): Interval => ({ first: { months: first, distance: null }, repeat: { months: repeat, distance: null } });
const km = (value: number): Interval => ({ repeat: { months: null, distance: { value, unit: 'km' } } });

/** What is advised on one item of a household. */
function advised(household: MemoryHousehold, item: Item, then: (household: MemoryHousehold) => void = () => undefined) {
  household.must('item.add', { id: 'it', car: 'pip', name: 'It', interval: months(12), ...item });
  then(household);
  const view = household.must('intake.show', { car: 'Pip' });
  for (const when of ['now', 'look', 'wait'] as const) {
    const found = view[when].find((one) => one.item === 'it');
    if (found !== undefined) return { when, ...found };
  }
  throw new Error('not advised');
}

describe('what nobody knows', () => {
  // Which of them comes first is ours, no source. By hand: 72 months since first registration.
  test.each([
    { case: 'a matter of safety is replaced now', item: { harm: 'safety' }, when: 'now', code: 'intake-replace-safety' },
    { case: 'what can do damage is replaced now', item: { harm: 'damage' }, when: 'now', code: 'intake-replace-damage' },
    { case: 'what is comfort may wait', item: { harm: 'comfort' }, when: 'wait', code: 'intake-replace-comfort' },
    { case: 'a check of safety only needs a look', item: { harm: 'safety', work: 'check' }, when: 'look', code: 'intake-look-safety' },
    { case: 'a check against damage only needs a look', item: { harm: 'damage', work: 'check' }, when: 'look', code: 'intake-look-damage' },
    { case: 'a check of comfort only needs a look', item: { harm: 'comfort', work: 'check' }, when: 'look', code: 'intake-look-comfort' },
    { case: 'never due yet, it may wait', item: { harm: 'safety', interval: months(96) }, when: 'wait', code: 'intake-not-yet', until: '2028-11-25' },
    { case: 'due on the very day, it may not', item: { harm: 'safety', interval: months(72) }, when: 'now', code: 'intake-replace-safety' },
    { case: 'done early it could be due again, though the first time is far', item: { harm: 'safety', interval: months(96, 24) }, when: 'now', code: 'intake-replace-safety' },
    { case: 'due again later than the first time, the first time counts', item: { harm: 'safety', interval: months(84, 120) }, when: 'wait', code: 'intake-not-yet', until: '2027-11-25' },
    { case: 'by distance far off, it may wait', item: { harm: 'damage', interval: km(100_000) }, when: 'wait', code: 'intake-not-yet' },
    { case: 'by distance too far to be foreseen, it may wait five years', item: { harm: 'damage', interval: km(900_000) }, when: 'wait', code: 'intake-not-yet', until: '2031-11-01' },
    { case: 'by distance passed, it may not', item: { harm: 'damage', interval: km(60_000) }, when: 'now', code: 'intake-replace-damage' },
    { case: 'with a date printed on it that has not come', item: { harm: 'safety', interval: months(96), printedDate: day('2027-05-01') }, when: 'wait', code: 'intake-not-yet', until: '2027-05-01' },
    { case: 'with a date printed on it that has passed', item: { harm: 'safety', interval: months(96), printedDate: day('2026-05-01') }, when: 'now', code: 'reason-printed-date' },
  ] as const)('$case', ({ item, when, code, ...row }) => {
    const found = advised(bought(), item as unknown as Item);
    expect([found.when, found.reason.code, found.knowledge, found.answered]).toEqual([when, code, 'unknown', null]);
    if ('until' in row) expect(found.until).toBe(row.until);
    if (when !== 'wait') expect(found.until).toBeNull();
  });

  test.each([
    { case: 'first registration', household: () => bought({ firstRegistered: null }), interval: months(96) },
    { case: 'first registration, for months among others', household: () => bought({ firstRegistered: null }), interval: { repeat: { months: 96, distance: { value: 100_000, unit: 'km' } } } as Interval },
    { case: 'reading', household: () => bought({}, false), interval: km(100_000) },
    { case: 'reading for the first time alone', household: () => bought({}, false), interval: { first: { months: null, distance: { value: 100_000, unit: 'km' } }, repeat: { months: 96, distance: null } } as Interval },
  ])('without a $case nothing is said to be not due yet', ({ household, interval }) => {
    expect(advised(household(), { harm: 'safety', interval })).toMatchObject({ when: 'now', reason: { code: 'intake-replace-safety' } });
  });

  test('answered as unknown stays unknown, and is counted as answered', () => {
    const household = bought();
    const found = advised(household, { harm: 'safety' }, (all) => void all.must('intake.answer', { car: 'pip', item: 'it', answer: 'unknown' }));
    expect(found).toMatchObject({ when: 'now', knowledge: 'unknown', answered: 'unknown' });
    expect(household.must('intake.show', { car: 'pip' }).counts).toEqual({ items: 1, questions: 1, open: 0, answered: 1, proven: 0, said: 0, unknown: 1 });
  });
});

describe('what is known', () => {
  const said = (date: string) => (household: MemoryHousehold) => void household.must('intake.answer', { car: 'pip', item: 'it', answer: 'said', date: day(date) });
  const recorded = (date: string) => (household: MemoryHousehold) => void household.must('record.add', { car: 'pip', date: day(date), lines: [{ item: 'it' }] });

  test.each([
    { case: 'said, and due by now: do it', item: {}, then: said('2025-11-01'), when: 'now', code: 'reason-time-completion', knowledge: 'said' },
    { case: 'said, a check due by now: look', item: { work: 'check' }, then: said('2025-11-01'), when: 'look', code: 'reason-time-completion', knowledge: 'said' },
    { case: 'said, not due, a matter of damage: a look shows it', item: {}, then: said('2026-06-01'), when: 'look', code: 'intake-said-look', knowledge: 'said' },
    { case: 'said, not due, comfort: may wait', item: { harm: 'comfort' }, then: said('2026-06-01'), when: 'wait', code: 'intake-said-waits', knowledge: 'said', until: '2027-06-01' },
    { case: 'recorded when it was done: may wait', item: { harm: 'safety' }, then: recorded('2026-11-20'), when: 'wait', code: 'intake-waits', knowledge: 'recorded', until: '2027-11-20' },
    { case: 'counted from the purchase: may wait', item: { harm: 'safety', history: 'from-purchase' }, then: () => undefined, when: 'wait', code: 'intake-waits-from', knowledge: 'from-purchase', until: '2027-11-01' },
    { case: 'never done and due: do it', item: { history: 'never-done' }, then: () => undefined, when: 'now', code: 'reason-time-first-registration', knowledge: 'never-done' },
    // By hand: 60 000 km three weeks ago at some 10 000 a year is more than 60 300 now.
    { case: 'never done and probably due: do it', item: { history: 'never-done', interval: km(60_300) }, then: () => undefined, when: 'now', code: 'reason-distance-first-registration', knowledge: 'never-done' },
    { case: 'never done and not due: may wait', item: { history: 'never-done', interval: months(84) }, then: () => undefined, when: 'wait', code: 'intake-waits-from', knowledge: 'never-done', until: '2027-11-25' },
    { case: 'never done and not foreseen: may wait', item: { history: 'never-done', interval: km(900_000) }, then: () => undefined, when: 'wait', code: 'intake-waits-long', knowledge: 'never-done' },
    { case: 'with a day of its own', item: { anchor: { kind: 'calendar', firstDate: day('2027-04-01') } }, then: () => undefined, when: 'wait', code: 'intake-waits-from', knowledge: 'dated', until: '2027-04-01' },
  ] as const)('$case', ({ item, then, when, code, knowledge, ...row }) => {
    const found = advised(bought(), item as unknown as Item, then);
    expect([found.when, found.reason.code, found.knowledge]).toEqual([when, code, knowledge]);
    expect(found.until).toBe('until' in row ? row.until : null);
  });

  // By hand: 60 000 km on 1 November at about 10 000 km a year, so 10 000 km more a year on; a forecast is said by its month.
  test.each([
    { case: 'waits by distance', item: { history: 'never-done', interval: km(70_000) }, exact: false, text: /^It is not likely due before (October|November) 2027\.$/ },
    { case: 'waits by time', item: { history: 'never-done', interval: months(84) }, exact: true, text: /^It is not likely due before 25 Nov 2027\.$/ },
    { case: 'unknown, and cannot be due by distance yet', item: { interval: km(100_000) }, exact: false, text: /cannot be due before \w+ 20\d\d\.$/ },
    { case: 'unknown, and cannot be due by time yet', item: { interval: months(96) }, exact: true, text: /cannot be due before 25 Nov 2028\.$/ },
  ] as const)('$case: $text', ({ item, exact, text }) => {
    const found = advised(bought(), item as unknown as Item);
    expect(found.exact).toBe(exact);
    expect(found.reason.text).toMatch(text);
  });

  test('what may wait stands in the order in which it ends waiting', () => {
    const household = bought();
    for (const [name, harm, at] of [['late', 'safety', 96], ['soon', 'comfort', 84]] as const) household.must('item.add', { id: name, car: 'pip', name, interval: months(at), history: 'never-done', harm });
    expect(household.must('intake.show', { car: 'pip' }).wait.map((one) => one.item)).toEqual(['soon', 'late']);
  });

  test('counted from the purchase, with nothing read: it says what is missing', () => {
    expect(advised(bought({}, false), { history: 'from-purchase', interval: km(10_000) })).toMatchObject({ when: 'wait', until: null, reason: { code: 'reason-no-reading' } });
  });

  test('proven by its paper: it may wait, and is counted as proven', () => {
    const household = bought();
    keepReceipt(household);
    const found = advised(household, { harm: 'safety' }, (all) => void all.must('intake.answer', { car: 'pip', item: 'it', answer: 'proven', date: day('2026-06-01'), papers: [RECEIPT] }));
    expect(found).toMatchObject({ when: 'wait', knowledge: 'proven', answered: 'proven', doneOn: '2026-06-01', until: '2027-06-01' });
    expect(household.must('intake.show', { car: 'pip' }).counts).toMatchObject({ proven: 1, said: 0, unknown: 0 });
  });

  test('of two records of one day, the one with a paper proves it', () => {
    const household = bought();
    keepReceipt(household);
    const found = advised(household, {}, (all) => {
      all.must('record.add', { id: 'a-first', car: 'pip', date: day('2026-06-01'), lines: [{ item: 'it' }] });
      all.must('record.add', { id: 'b-second', car: 'pip', date: day('2026-06-01'), lines: [{ item: 'it' }], papers: [RECEIPT] });
      all.must('record.add', { id: 'c-older', car: 'pip', date: day('2026-05-01'), lines: [{ item: 'it' }] });
    });
    expect(found).toMatchObject({ knowledge: 'proven', record: 'b-second', doneOn: '2026-06-01' });
  });

  test('an older paper does not prove what was done since', () => {
    const household = bought();
    keepReceipt(household);
    const found = advised(household, {}, (all) => {
      all.must('record.add', { id: 'a-older', car: 'pip', date: day('2026-05-01'), lines: [{ item: 'it' }], papers: [RECEIPT] });
      all.must('record.add', { id: 'b-newer', car: 'pip', date: day('2026-06-01'), lines: [{ item: 'it' }] });
    });
    expect(found).toMatchObject({ knowledge: 'recorded', record: 'b-newer' });
  });

  test('a line left undone proves nothing', () => {
    const found = advised(bought(), {}, (all) => void all.must('record.add', { car: 'pip', date: day('2026-11-20'), lines: [{ item: 'it', outcome: 'not-done' }] }));
    expect(found).toMatchObject({ when: 'now', knowledge: 'unknown', doneOn: null, record: null });
  });
});

describe('what is still to be asked', () => {
  const answer = (request: Partial<RequestOf<'intake.answer'>>) => (household: MemoryHousehold) => void household.must('intake.answer', { car: 'pip', item: 'it', answer: 'unknown', ...request });
  test.each([
    { case: 'nobody knows', item: {}, then: () => undefined, question: 'open' },
    { case: 'answered that nobody knows', item: {}, then: answer({}), question: 'settled' },
    { case: 'taken to be never done, and late', item: { history: 'never-done' }, then: () => undefined, question: 'open' },
    { case: 'answered as never done, and late', item: {}, then: answer({ answer: 'never-done' }), question: 'settled' },
    { case: 'taken to be never done, and not due', item: { history: 'never-done', interval: months(84) }, then: () => undefined, question: 'settled' },
    { case: 'counted from the purchase', item: { history: 'from-purchase' }, then: () => undefined, question: 'settled' },
    { case: 'said', item: {}, then: answer({ answer: 'said', date: day('2026-06-01') }), question: 'settled' },
    { case: 'recorded by the keeper', item: {}, then: (household: MemoryHousehold) => void household.must('record.add', { car: 'pip', date: day('2026-11-20'), lines: [{ item: 'it' }] }), question: 'none' },
    { case: 'with a day of its own', item: { anchor: { kind: 'calendar', firstDate: day('2027-04-01') } }, then: () => undefined, question: 'none' },
  ] as const)('$case: $question', ({ item, then, question }) => {
    const household = bought();
    expect(advised(household, item as unknown as Item, then).question).toBe(question);
    expect(household.must('intake.show', { car: 'pip' }).counts).toMatchObject({ questions: question === 'none' ? 0 : 1, open: question === 'open' ? 1 : 0 });
  });

  test('whether the work has its reading already', () => {
    expect(advised(bought(), {}, answer({ answer: 'said', date: day('2026-06-01') })).readingGiven).toBe(false);
    const read = advised(bought(), {}, answer({ answer: 'said', date: day('2026-06-01'), reading: { value: 56_000, unit: 'km' } }));
    expect(read.readingGiven).toBe(true);
    expect(advised(bought(), {}, (all) => {
      answer({ answer: 'said', date: day('2026-06-01'), reading: { value: 56_000, unit: 'km' } })(all);
      answer({})(all);
    })).toMatchObject({ knowledge: 'unknown', readingGiven: true });
  });
});

describe('the whole of it', () => {
  test('safety comes first, then what may wait least; minutes are summed', () => {
    const household = bought();
    household.must('items.start', { car: 'pip', set: 'petrol' });
    const view = household.must('intake.show', { car: 'pip' });
    const harm = { safety: 0, damage: 1, comfort: 2 };
    for (const list of [view.now, view.look, view.wait]) expect(list.map((one) => harm[one.harm])).toEqual(list.map((one) => harm[one.harm]).sort());
    expect(view.now.map((one) => one.name)).toEqual(['Brake fluid', 'Tyre sealant bottle', 'Wiper blades', 'Coolant', 'Engine air filter', 'Engine oil and filter', 'Spark plugs']);
    expect(view.look.every((one) => one.work === 'check')).toBe(true);
    expect(view.wait.map((one) => one.name)).toEqual(['Cabin filter']);
    // By hand: 60 + 5 + 10 + 90 + 15 + 45 + 45.
    expect(view.minutes.now).toBe(270);
    expect(view.minutes.without).toBe([...view.now, ...view.look].filter((one) => one.minutes === null).length);
    expect(view.minutes.without).toBeGreaterThan(0);
    expect(view.counts).toMatchObject({ items: 19, answered: 0, unknown: 19 });
  });

  test('of what may wait alike, the soonest comes first', () => {
    const household = bought();
    household.must('item.add', { car: 'pip', name: 'A', interval: months(96) });
    household.must('item.add', { car: 'pip', name: 'B', interval: months(84) });
    household.must('item.add', { car: 'pip', name: 'C', interval: km(100_000), history: 'from-purchase', harm: 'damage' });
    expect(household.must('intake.show', { car: 'pip' }).wait.map((one) => one.name)).toEqual(['B', 'A', 'C']);
  });

  test('the day of the purchase is asked for where something could be counted from it', () => {
    const codes = (car: Partial<RequestOf<'car.add'>>, history: 'unknown' | 'from-purchase' | 'never-done') => {
      const household = bought(car);
      household.must('item.add', { id: 'it', car: 'pip', name: 'It', interval: months(12), history });
      return household.must('intake.show', { car: 'pip' }).first.map((one) => one.code);
    };
    expect(codes({ keptSince: null }, 'unknown')).toContain('intake-no-purchase');
    expect(codes({ keptSince: null }, 'from-purchase')).toContain('intake-no-purchase');
    expect(codes({ keptSince: null }, 'never-done')).not.toContain('intake-no-purchase');
    expect(codes({}, 'from-purchase')).not.toContain('intake-no-purchase');
  });

  test('what is counted from a purchase without its day is not called so', () => {
    const found = advised(bought({ keptSince: null }), { history: 'from-purchase' });
    expect(found).toMatchObject({ when: 'now', until: null, question: 'open', knowledge: 'unknown' });
  });

  test('what is missing of the car itself is asked for first', () => {
    const codes = (household: MemoryHousehold) => household.must('intake.show', { car: 'pip' }).first.map((one) => one.code);
    expect(codes(bought({ firstRegistered: null }, false))).toEqual(['intake-no-reading', 'intake-no-registration', 'intake-no-items', 'intake-no-obligations']);
    const whole = bought();
    whole.must('items.start', { car: 'pip' });
    whole.must('obligation.add', { car: 'pip', kind: 'insurance', lastValidDay: day('2027-01-01') });
    expect(codes(whole)).toEqual([]);
    expect(whole.call('intake.show', { car: 'nobody' })).toMatchObject({ ok: false, refusal: { code: 'unknown-car' } });
  });
});

test('nothing unknown that could be due by now is told to wait, but for comfort', () => {
  const limit = fc.integer({ min: 1, max: 120 });
  fc.assert(fc.property(limit, limit, fc.constantFrom('safety', 'damage', 'comfort'), fc.constantFrom('replace', 'check'), (first, repeat, harm, work) => {
    const found = advised(bought(), { interval: months(first, repeat), harm, work } as Item);
    // Done at some time since 2020-11-25 and due again, or never done and due: either is possible by today.
    const possible = addMonths(day('2020-11-25'), Math.min(first, repeat)) <= day('2026-11-25');
    expect(found.when === 'wait').toBe(!possible || (harm === 'comfort' && work === 'replace'));
    if (!possible) expect(found.until).toBe(addMonths(day('2020-11-25'), Math.min(first, repeat)));
  }), { numRuns: 60 });
});
