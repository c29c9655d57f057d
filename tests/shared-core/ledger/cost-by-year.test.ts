import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Renewal } from '../../../shared-core/care/renewal.ts';
import { costByYear, totalOf } from '../../../shared-core/ledger/cost-by-year.ts';
import type { CostLine } from '../../../shared-core/records/work-record.ts';
import { LARGEST_MINOR } from '../../../shared-core/units/money.ts';
import { anyDate, day } from '../calendar/day.ts';
import { recordOn } from '../records/record-examples.ts';

const cost = (kind: CostLine['kind'], amountMinor: number): CostLine => ({ kind, text: 'x', amountMinor });
const renewalOn = (date: string, paidMinor: number | null): Renewal =>
  ({ id: `n-${date}`, car: 'pip', obligation: 'duty', on: day(date), lastValidDay: day(date), paidMinor, reference: null, papers: [] });

describe('cost by year', () => {
  // By hand, in minor units.
  test.each([
    { case: 'nothing', records: [], renewals: [], years: [] },
    {
      case: 'lines by kind, a discount taken off', records: [recordOn('2026-05-01', { costs: [cost('parts', 3499), cost('parts', 1250), cost('labour', 6000), cost('discount', -350)] })], renewals: [],
      years: [{ year: 2026, totalMinor: 10_399, byKind: { parts: 4749, labour: 6000, discount: -350 } }],
    },
    {
      case: 'a printed total that its lines do not make is kept, the rest named', records: [recordOn('2026-05-01', { costs: [cost('parts', 3499), cost('fee', 1)], printedTotalMinor: 3501 })], renewals: [],
      years: [{ year: 2026, totalMinor: 3501, byKind: { parts: 3499, fee: 1, rounding: 1 } }],
    },
    {
      case: 'a printed total that they make', records: [recordOn('2026-05-01', { costs: [cost('parts', 3499)], printedTotalMinor: 3499 })], renewals: [],
      years: [{ year: 2026, totalMinor: 3499, byKind: { parts: 3499 } }],
    },
    {
      case: 'a printed total alone', records: [recordOn('2026-05-01', { printedTotalMinor: 9900 })], renewals: [],
      years: [{ year: 2026, totalMinor: 9900, byKind: { other: 9900 } }],
    },
    {
      case: 'a printed total of 0 is a total', records: [recordOn('2026-05-01', { costs: [cost('labour', 5000)], printedTotalMinor: 0 })], renewals: [],
      years: [{ year: 2026, totalMinor: 0, byKind: { labour: 5000, rounding: -5000 } }],
    },
    {
      case: 'latest year first, by the date of the work, duties among them', records: [recordOn('2025-12-31', { printedTotalMinor: 100 }), recordOn('2026-01-01', { printedTotalMinor: 20 })],
      renewals: [renewalOn('2026-07-01', 5485), renewalOn('2024-07-01', 5000), renewalOn('2023-07-01', null)],
      years: [{ year: 2026, totalMinor: 5505, byKind: { other: 20, obligation: 5485 } }, { year: 2025, totalMinor: 100, byKind: { other: 100 } }, { year: 2024, totalMinor: 5000, byKind: { obligation: 5000 } }],
    },
    { case: 'work that cost nothing makes no year', records: [recordOn('2026-05-01')], renewals: [], years: [] },
  ])('$case', ({ records, renewals, years }) => {
    expect(costByYear(records, renewals)).toEqual(years);
  });

  const anyMinor = fc.integer({ min: -1_000_000, max: 1_000_000 });
  const anyCost = fc.record({ kind: fc.constantFrom<CostLine['kind']>('parts', 'labour', 'consumables', 'tools', 'fee', 'deposit', 'discount', 'other'), text: fc.constant('x'), amountMinor: anyMinor });
  const anyRecord = fc.record({ date: anyDate(day('2015-01-01'), day('2026-12-31')), costs: fc.array(anyCost, { maxLength: 6 }), printedTotalMinor: fc.option(anyMinor) }).map(({ date, ...more }) => recordOn(date, more));
  const anyRenewal = fc.tuple(anyDate(day('2015-01-01'), day('2026-12-31')), fc.option(anyMinor)).map(([date, paid]) => renewalOn(date, paid));

  test('every year is the sum of its kinds, and all years together the sum of all totals, to the minor unit', () => {
    fc.assert(fc.property(fc.array(anyRecord, { maxLength: 12 }), fc.array(anyRenewal, { maxLength: 5 }), (records, renewals) => {
      const years = costByYear(records, renewals);
      const sum = (amounts: readonly number[]) => amounts.reduce((total, amount) => total + amount, 0);
      for (const one of years) expect(sum(Object.values(one.byKind))).toBe(one.totalMinor);
      expect(sum(years.map((one) => one.totalMinor))).toBe(sum(records.map(totalOf)) + sum(renewals.map((one) => one.paidMinor ?? 0)));
      expect(years.map((one) => one.year)).toEqual([...new Set(years.map((one) => one.year))].sort((a, b) => b - a));
    }));
  });

  test('the largest amounts taken still add up exactly', () => {
    const records = Array.from({ length: 100 }, (_, n) => recordOn('2026-05-01', { id: `w${n}`, costs: [cost('parts', LARGEST_MINOR), cost('parts', 1)] }));
    expect(costByYear(records, [])[0]?.totalMinor).toBe(100 * LARGEST_MINOR + 100);
  });
});

test('a record costs its printed total, else the sum of its lines', () => {
  expect([
    totalOf(recordOn('2026-05-01')), totalOf(recordOn('2026-05-01', { costs: [cost('parts', 3499), cost('discount', -99)] })),
    totalOf(recordOn('2026-05-01', { costs: [cost('parts', 3499)], printedTotalMinor: 3500 })), totalOf(recordOn('2026-05-01', { costs: [cost('parts', 3499)], printedTotalMinor: 0 })),
  ]).toEqual([0, 3400, 3500, 0]);
});
