import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, dayNumber, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { probabilityDueBy } from '../../../shared-core/fleet/odometer-forecast.ts';
import { budgetAhead, budgetBeside, type Budget, type BudgetBand } from '../../../shared-core/ledger/budget.ts';
import { CASES } from '../../../shared-core/ledger/budget-draws.ts';
import type { BudgetExtra, BudgetInput, BudgetTask } from '../../../shared-core/ledger/budget-input.ts';
import { priceHabits } from '../../../shared-core/ledger/budget-prices.ts';
import { day } from '../calendar/day.ts';
import { budgetOf, due, priced, task, TODAY, usage } from './budget-fixture.ts';
import { convolved, lognormal, maybe, shareUpTo } from './exact-sums.ts';

/** Prices that have stood still for years: no growth, next to no spread. */
const STEADY = { lagDays: [], pastPrices: Array.from({ length: 400 }, () => [{ on: day('2024-01-01'), minor: 5000 }, { on: day('2025-01-01'), minor: 5000 }]) };
const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0);

describe('lines', () => {
  test('each time is listed with its day, price and reason, and they add up to what is planned', () => {
    const budget = budgetAhead(budgetOf([task('tax', { price: priced(18_000) }), task('test', { first: due(day('2026-10-01')), price: priced(5500, { source: 'as-last-times', known: 3 }) })]));
    expect(budget.lines.map((line) => [line.name, line.due, line.on, line.month, line.amountMinor, line.source, line.known, line.late])).toEqual([
      ['test', '2026-10-01', '2026-11-25', 0, 5500, 'as-last-times', 3, true],
      ['tax', '2027-03-01', '2027-03-01', 3, 18_000, 'entered', 1, false],
      ['test', '2027-11-24', '2027-11-24', 11, 5500, 'as-last-times', 3, false],
      ['tax', '2028-03-01', '2028-03-01', 15, 18_000, 'entered', 1, false],
      ['test', '2028-11-24', '2028-11-24', 23, 5500, 'as-last-times', 3, false],
    ]);
    expect(budget.total.plannedMinor).toBe(3 * 5500 + 2 * 18_000);
    expect([budget.from, budget.to, budget.months.length, budget.quarters.length]).toEqual(['2026-11-25', '2028-11-24', 24, 8]);
  });

  test('a quoted visit takes the place of the first time of what it covers, and only of that', () => {
    const budget = budgetAhead(budgetOf([task('test', { sessionOn: day('2027-02-10'), firstInQuote: true, price: priced(5500) })], { visits: [{ key: 'visit/s', name: 'the garage', on: day('2027-02-10'), shares: [{ car: 'pip', minor: 9900 }] }] }));
    expect(budget.lines.map((line) => [line.kind, line.on, line.amountMinor])).toEqual([['visit', '2027-02-10', 9900], ['obligation', '2028-03-01', 5500]]);
  });

  test('what lies on the shelf costs nothing again: first to who needs it first, never after it expires, never before it comes', () => {
    const oil = (minor: number) => priced(minor, { source: 'offers', goods: [{ specification: 'oil', quantity: 4, minor }] });
    const of = (id: string, on: string) => task(id, { first: due(day(on)), next: { kind: 'never' }, price: oil(4000) });
    const budget = budgetAhead(budgetOf([of('b', '2027-05-01'), of('a', '2027-02-01'), of('c', '2027-09-01'), of('d', '2027-12-01')], {
      stock: [
        { id: 'can', meets: ['oil'], quantity: 6, from: TODAY, goodUntil: null },
        { id: 'old', meets: ['oil'], quantity: 1, from: TODAY, goodUntil: day('2027-01-31') },
        { id: 'coming', meets: ['oil'], quantity: 3, from: day('2027-11-01'), goodUntil: null },
        { id: 'other', meets: ['coolant'], quantity: 50, from: TODAY, goodUntil: null },
      ],
    }));
    expect(budget.lines.map((line) => [line.name, line.amountMinor, line.offShelfMinor])).toEqual([['a', 0, 4000], ['b', 2000, 2000], ['c', 4000, 0], ['d', 1000, 3000]]);
  });

  test('what has no price, and what has no due day, is named and never invented; what does not fall due is not named', () => {
    const unknown = { key: 'item/box', car: 'pip', name: 'gearbox oil', why: 'unknown' } as const;
    const budget = budgetAhead(budgetOf([task('tax', { price: null }), task('far', { price: null, first: due(day('2031-01-01')) })], { unknown: [unknown] }));
    expect(budget.missing).toEqual([unknown, { key: 'obligation/tax', car: 'pip', name: 'tax', why: 'unpriced' }]);
    expect(budget.total).toEqual({ lowMinor: 0, likelyMinor: 0, highMinor: 0, expectedMinor: 0, plannedMinor: 0 });
  });

  test('the first of a quoted thing without a price of its own is not missing, its next time is', () => {
    const once = task('test', { sessionOn: day('2027-02-10'), firstInQuote: true, price: null, next: { kind: 'never' } });
    expect(budgetAhead(budgetOf([once])).missing).toEqual([]);
    expect(budgetAhead(budgetOf([{ ...once, next: { kind: 'certificate', months: 12, keepsDate: true } }])).missing).toHaveLength(1);
  });

  test('no car, no cost', () => {
    expect(budgetAhead(budgetOf([task('tax')], { cars: [], unplanned: [{ car: 'gone', on: day('2026-01-01'), minor: 50_000 }], watched: [{ car: 'gone', years: 6 }] })).total).toEqual({ lowMinor: 0, likelyMinor: 0, highMinor: 0, expectedMinor: 0, plannedMinor: 0 });
  });

  test('one car asked for: its own costs, as they are among all', () => {
    const both = budgetOf([task('tax'), task('other', { car: 'wren' })], { cars: [{ id: 'pip', name: 'Pip', usage: null }, { id: 'wren', name: 'Wren', usage: null }], unplanned: [{ car: 'pip', on: day('2026-01-01'), minor: 50_000 }], watched: [{ car: 'pip', years: 3 }, { car: 'wren', years: 3 }] });
    const [all, one] = [budgetAhead(both), budgetAhead({ ...both, only: 'wren' })];
    const { car: _car, expectedMinor: _expected, ...band } = all.cars.find(({ car }) => car === 'wren') ?? { car: '', expectedMinor: 0 };
    expect(one.total).toMatchObject(band);
    expect([one.cars.map(({ car }) => car), one.lines.map(({ name }) => name)]).toEqual([['wren'], ['other', 'other']]);
  });
});

describe('prices that grow', () => {
  const yearly = (factor: number, count: number) => [Array.from({ length: count }, (_, at) => ({ on: addDays(day('2014-01-01'), Math.round(at * 365.25)), minor: Math.round(10_000 * factor ** at) }))];

  test('are not assumed: with few pairs of prices none is reckoned', () => {
    expect(priceHabits({ pastPrices: yearly(1.06, 8) })).toMatchObject({ growth: 0, pairs: 7 });
    expect(budgetAhead(budgetOf([task('tax')], { habits: { pastPrices: yearly(1.06, 8), lagDays: [] } })).lines.map(({ amountMinor }) => amountMinor)).toEqual([10_000, 10_000]);
  });

  // ln 1.06 = 0.0583. 12 pairs a year apart: the fit is exact, so of the spread only the usual one is left: 6 x 0.15^2 / 18 = 0.0075;
  // its own variance 2 x 0.0075 / 12 = 0.00125, so it is trusted 0.0016 / (0.0016 + 0.00125) = 0.561. By hand.
  test('are learned from the household\'s own, drawn to none', () => {
    const { growth, spread, pairs } = priceHabits({ pastPrices: yearly(1.06, 13) });
    expect([pairs, Math.round(growth * 1000) / 1000, Math.round(spread ** 2 * 10_000) / 10_000]).toEqual([12, 0.033, 0.0075]);
    const [first] = budgetAhead(budgetOf([task('tax', { first: due(day('2027-11-25')), next: { kind: 'never' } })], { habits: { pastPrices: yearly(1.06, 13), lagDays: [] } })).lines;
    expect([first?.amountMinor, first?.grownMinor]).toEqual([Math.round(10_000 * Math.exp(growth * (365 / 365.25))), Math.round(10_000 * Math.exp(growth * (365 / 365.25))) - 10_000]);
  });
});

// What is drawn is held against the sum's whole distribution, worked out by convolution (exact-sums.ts), which draws nothing.
describe('against exact sums', () => {
  const within = (share: number, wanted: number) => expect(Math.abs(share - wanted), `${share} for ${wanted}`).toBeLessThan(5 * Math.sqrt((wanted * (1 - wanted)) / CASES));
  const bandHolds = (exact: Float64Array, unit: number, { lowMinor, likelyMinor, highMinor }: BudgetBand) => {
    within(shareUpTo(exact, lowMinor / unit), 0.1);
    within(shareUpTo(exact, likelyMinor / unit), 0.5);
    within(shareUpTo(exact, highMinor / unit), 0.9);
  };

  test('three prices, each with its own spread, due today', () => {
    const minors = [4000, 9000, 25_000];
    const budget = budgetAhead(budgetOf(minors.map((minor, at) => task(`t${at}`, { first: due(TODAY), next: { kind: 'never' }, price: priced(minor) }))));
    // Level and time: twice 0.15 squared.
    const exact = minors.map((minor) => lognormal(minor / 100, Math.hypot(0.15, 0.15), 1200)).reduce((a, b) => convolved(a, b));
    bandHolds(exact, 100, budget.total);
  });

  test('six things of six cars that may or may not fall due in time', () => {
    const cars = Array.from({ length: 6 }, (_, at) => ({ id: `car${at}`, name: `Car ${at}`, usage: usage() }));
    const tasks = cars.map(({ id }, at): BudgetTask => task(`far${at}`, { car: id, first: { ...due(null), km: 70_000 + at * 1500 }, next: { kind: 'never' }, price: priced(10_000 + at * 2000) }));
    const budget = budgetAhead(budgetOf(tasks, { cars, habits: STEADY }));
    const spread = Math.sqrt(2) * priceHabits(STEADY).spread;
    const lastDay = dayNumber(day('2028-11-24'));
    const chances = cars.map((car, at) => probabilityDueBy(car.usage, 70_000 + at * 1500, lastDay));
    for (const chance of chances) expect([chance > 0.2, chance < 0.9]).toEqual([true, true]);
    const exact = chances.map((chance, at) => maybe(chance, lognormal((10_000 + at * 2000) / 100, spread, 1200))).reduce((a, b) => convolved(a, b));
    bandHolds(exact, 100, budget.total);
    const mean = sum(chances.map((chance, at) => chance * (10_000 + at * 2000) * Math.exp(spread ** 2 / 2)));
    expect(Math.abs(budget.total.expectedMinor / mean - 1)).toBeLessThan(0.03);
  });

  test('things of one car come together or not at all; those of four cars do not', () => {
    const ids = ['a', 'b', 'c', 'd'];
    const cars = ids.map((id) => ({ id, name: id, usage: usage() }));
    const of = (carOf: (id: string) => string) => budgetAhead(budgetOf(ids.map((id) => task(id, { car: carOf(id), first: { ...due(null), km: 74_000 }, next: { kind: 'never' }, price: priced(10_000) })), { cars, habits: STEADY })).total;
    const times = ({ lowMinor, highMinor }: BudgetBand) => [Math.round(lowMinor / 10_000), Math.round(highMinor / 10_000)];
    expect([times(of(() => 'a')), times(of((id) => id))]).toEqual([[0, 4], [1, 3]]);
  });

  test('unplanned repairs: the mean is their rate times their mean, by the household\'s past', () => {
    const unplanned = Array.from({ length: 40 }, (_, at) => ({ car: 'pip', on: addDays(day('2017-01-01'), at * 90), minor: 5000 + 1000 * (at % 11) }));
    const budget = budgetAhead(budgetOf([], { unplanned, watched: [{ car: 'pip', years: 10 }] }));
    // 4 a year for 2 years, at 9850 each: by hand (40 costs, 18 of them whole rounds). Half an event more stands for what is not known.
    const mean = 2 * 4 * (sum(unplanned.map(({ minor }) => minor)) / 40);
    expect(Math.abs(budget.total.expectedMinor / mean - 1)).toBeLessThan(0.04);
    expect(budget.unplanned).toEqual({ count: 40, years: 10 });
  });

  test('with too little to look back on nothing is said of them; with none there are none', () => {
    const once = [{ car: 'pip', on: day('2026-10-01'), minor: 40_000 }];
    expect(budgetAhead(budgetOf([], { unplanned: once, watched: [{ car: 'pip', years: 0.9 }] }))).toMatchObject({ unplanned: null, total: { highMinor: 0 } });
    expect(budgetAhead(budgetOf([], { watched: [{ car: 'pip', years: 5 }] }))).toMatchObject({ unplanned: { count: 0, years: 5 }, total: { highMinor: 0 } });
  });
});

const SOON = fc.integer({ min: -100, max: 900 }).map((days) => addDays(TODAY, days));
const CARS = ['pip', 'wren'];

/** A thing of either car: by date, by distance or both. */
const anyTask: fc.Arbitrary<Omit<BudgetTask, 'key' | 'name'>> = fc.record({
  car: fc.constantFrom(...CARS),
  kind: fc.constantFrom('item', 'obligation'),
  first: fc.record({ date: fc.option(SOON), printedDate: fc.option(SOON, { freq: 1 }), km: fc.option(fc.integer({ min: 49_000, max: 90_000 })), reachedOn: fc.constant(null), wear: fc.constant(null) }),
  next: fc.oneof(
    fc.record({ kind: fc.constant('completion' as const), months: fc.option(fc.integer({ min: 2, max: 40 })), km: fc.option(fc.integer({ min: 2000, max: 40_000 })) }),
    fc.record({ kind: fc.constant('certificate' as const), months: fc.constantFrom(6, 12, 24), keepsDate: fc.boolean() }),
    fc.constant({ kind: 'never' as const }),
  ),
  sessionOn: fc.option(fc.integer({ min: 0, max: 60 }).map((days) => addDays(TODAY, days)), { freq: 1 }),
  lastDone: fc.constant(null),
  punctual: fc.boolean(),
  price: fc.option(fc.record({ minor: fc.integer({ min: 0, max: 60_000 }), source: fc.constant('entered' as const), known: fc.integer({ min: 1, max: 5 }), pricedOn: fc.constant(TODAY), goods: fc.constant([]) }), { freq: 8 }),
  firstInQuote: fc.constant(false),
});

const anyInput: fc.Arbitrary<BudgetInput> = fc.record({
  tasks: fc.array(anyTask, { maxLength: 6 }),
  lagDays: fc.array(fc.integer({ min: -30, max: 60 }), { maxLength: 6 }),
  unplanned: fc.array(fc.record({ car: fc.constantFrom(...CARS), on: fc.integer({ min: -2000, max: 0 }).map((days) => addDays(TODAY, days)), minor: fc.integer({ min: 0, max: 90_000 }) }), { maxLength: 6 }),
  months: fc.constantFrom(1, 5, 24),
}).map(({ tasks, lagDays, unplanned, months }) => budgetOf(tasks.map((one, at): BudgetTask => ({ ...one, key: `x/${at}`, name: `thing ${at}` })), {
  months, unplanned, cars: CARS.map((id) => ({ id, name: id, usage: usage() })), watched: CARS.map((car) => ({ car, years: 5 })), habits: { pastPrices: [], lagDays },
}));

const RUNS = { numRuns: 25 };
const bandsOf = (budget: Budget): readonly BudgetBand[] => [budget.total, ...budget.months, ...budget.quarters, ...budget.cars];

describe('properties', () => {
  test('one more priced obligation never lowers any sum', () => {
    fc.assert(fc.property(anyInput, SOON, fc.integer({ min: 1, max: 50_000 }), (input, on, minor) => {
      const more = budgetAhead({ ...input, tasks: [...input.tasks, task('more', { first: due(on), price: priced(minor) })] });
      const before = bandsOf(budgetAhead(input));
      for (const [at, band] of bandsOf(more).entries()) for (const edge of ['lowMinor', 'likelyMinor', 'highMinor', 'plannedMinor'] as const) expect(band[edge]).toBeGreaterThanOrEqual(before[at]?.[edge] ?? 0);
    }), RUNS);
  });

  test('twice the prices, twice the sums', () => {
    fc.assert(fc.property(anyInput, (input) => {
      const twice = { ...input, tasks: input.tasks.map((one) => ({ ...one, price: one.price === null ? null : { ...one.price, minor: 2 * one.price.minor } })), unplanned: input.unplanned.map((one) => ({ ...one, minor: 2 * one.minor })) };
      const once = bandsOf(budgetAhead(input));
      for (const [at, band] of bandsOf(budgetAhead(twice)).entries()) for (const edge of ['lowMinor', 'likelyMinor', 'highMinor', 'plannedMinor'] as const) expect(Math.abs(band[edge] - 2 * (once[at]?.[edge] ?? 0))).toBeLessThanOrEqual(1);
    }), RUNS);
  });

  test('four years later the same household has the same budget', () => {
    const later = (date: LocalDate | null) => (date === null ? null : addDays(date, 1461));
    fc.assert(fc.property(anyInput, (input) => {
      const moved: BudgetInput = {
        ...input,
        today: addDays(TODAY, 1461),
        cars: CARS.map((id) => ({ id, name: id, usage: usage(addDays(day('2026-11-20'), 1461)) })),
        tasks: input.tasks.map((one) => ({ ...one, first: { ...one.first, date: later(one.first.date), printedDate: later(one.first.printedDate) }, sessionOn: later(one.sessionOn), price: one.price === null ? null : { ...one.price, pricedOn: addDays(TODAY, 1461) } })),
        unplanned: input.unplanned.map((one) => ({ ...one, on: addDays(one.on, 1461) })),
      };
      const bands = (budget: Budget) => bandsOf(budget).map(({ lowMinor, likelyMinor, highMinor, expectedMinor, plannedMinor }) => ({ lowMinor, likelyMinor, highMinor, expectedMinor, plannedMinor }));
      expect(bands(budgetAhead(moved))).toEqual(bands(budgetAhead(input)));
    }), RUNS);
  });

  test('the order in which things are told does not matter', () => {
    fc.assert(fc.property(anyInput, (input) => {
      const turned = { ...input, tasks: [...input.tasks].reverse(), cars: [...input.cars].reverse(), unplanned: [...input.unplanned].reverse(), watched: [...input.watched].reverse(), habits: { ...input.habits, lagDays: [...input.habits.lagDays].reverse() } };
      expect(budgetAhead(turned)).toEqual(budgetAhead(input));
    }), RUNS);
  });

  test('lines add up to what is planned, and average sums add up, by month, quarter, car and kind', () => {
    fc.assert(fc.property(anyInput, (input) => {
      const budget = budgetAhead(input);
      expect(sum(budget.lines.map(({ amountMinor }) => amountMinor))).toBe(budget.total.plannedMinor);
      for (const parts of [budget.months, budget.quarters, budget.cars]) for (const edge of ['expectedMinor', 'plannedMinor'] as const) expect(sum(parts.map((one) => one[edge]))).toBe(budget.total[edge]);
      if (budget.kinds.length > 0) expect(sum(budget.kinds.map((one) => one.expectedMinor))).toBe(budget.total.expectedMinor);
      for (const line of budget.lines) expect([line.on >= (budget.months[line.month]?.from ?? ''), line.on <= (budget.months[line.month]?.to ?? '')]).toEqual([true, true]);
      if (budget.total.highMinor > budget.total.lowMinor) expect(sum(budget.drivers.map(({ share }) => share))).toBeCloseTo(1, 9);
    }), RUNS);
  });

  test('a wish adds itself and touches nothing else', () => {
    const wish: BudgetExtra = { id: 'radio', name: 'a radio', car: 'pip', month: 0, lowMinor: 15_000, likelyMinor: 20_000, highMinor: 30_000 };
    fc.assert(fc.property(anyInput, (input) => {
      const beside = budgetBeside(input, [wish]);
      expect(beside.without).toEqual(budgetAhead(input));
      expect(beside.with.total.plannedMinor - beside.without.total.plannedMinor).toBe(20_000);
      for (const edge of ['lowMinor', 'likelyMinor', 'highMinor'] as const) expect(beside.with.total[edge]).toBeGreaterThanOrEqual(beside.without.total[edge]);
      expect(beside.with.cars.find(({ car }) => car === 'wren')?.likelyMinor).toBe(beside.without.cars.find(({ car }) => car === 'wren')?.likelyMinor);
    }), RUNS);
    const alone = budgetBeside(budgetOf([]), [wish]).with;
    for (const [edge, wanted] of [['lowMinor', 15_000], ['likelyMinor', 20_000], ['highMinor', 30_000]] as const) expect(Math.abs(alone.total[edge] / wanted - 1)).toBeLessThan(0.03);
  });
});
