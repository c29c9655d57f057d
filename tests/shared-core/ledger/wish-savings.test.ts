import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { putBy, savingsPlan, type PuttingBy, type SavedFor } from '../../../shared-core/ledger/wish-savings.ts';
import { anyDate, day } from '../calendar/day.ts';

const saving = (savedBefore: number, monthlyMinor: number, savingSince: string | null): PuttingBy => ({ savedBefore, monthlyMinor, savingSince: savingSince === null ? null : day(savingSince) });
const wish = (id: string, costMinor: number | null): SavedFor => ({ id, costMinor });

describe('what is put by', () => {
  // By hand: a month counts from the day that is its months after the first, clipped to the month's end.
  test.each([
    { case: 'nothing monthly', from: saving(1000, 0, null), on: '2026-11-25', minor: 1000 },
    { case: 'the day before the month is whole', from: saving(1000, 500, '2026-01-15'), on: '2026-02-14', minor: 1000 },
    { case: 'the day on which it is', from: saving(1000, 500, '2026-01-15'), on: '2026-02-15', minor: 1500 },
    { case: 'from a 31st: the last of February', from: saving(0, 500, '2026-01-31'), on: '2026-02-28', minor: 500 },
    { case: 'from a 31st: the day before', from: saving(0, 500, '2026-01-31'), on: '2026-02-27', minor: 0 },
    { case: 'a year', from: saving(6000, 4000, '2025-12-25'), on: '2026-11-25', minor: 50_000 },
  ])('$case', ({ from, on, minor }) => expect(putBy(from, day(on))).toBe(minor));
});

describe('how far the savings reach', () => {
  // By hand: 10 whole months of 40.00 and 60.00 from before are 460.00 on 25 November; 100.00 are spent, so 360.00 are left.
  const pace = saving(6000, 4000, '2026-01-25');
  test('in the order of preference, the first day on which each and all before it are paid for', () => {
    const plan = savingsPlan(pace, 10_000, [wish('a', 30_000), wish('b', 10_000), wish('c', null), wish('d', 4000), wish('e', 1)], day('2026-11-25'));
    expect([plan.putByMinor, plan.spentMinor, plan.leftMinor]).toEqual([46_000, 10_000, 36_000]);
    expect(plan.wishes).toEqual([
      { id: 'a', savedMinor: 30_000, lacksMinor: 0, paidForOn: '2026-11-25' },
      // 400.00 and the 100.00 spent want 440.00 beyond the first 60.00: 11 months.
      { id: 'b', savedMinor: 6000, lacksMinor: 4000, paidForOn: '2026-12-25' },
      { id: 'c', savedMinor: 0, lacksMinor: null, paidForOn: null },
      { id: 'd', savedMinor: 0, lacksMinor: 4000, paidForOn: '2027-01-25' },
      { id: 'e', savedMinor: 0, lacksMinor: 1, paidForOn: '2027-02-25' },
    ]);
  });

  test.each([
    { case: 'nothing is put by', from: saving(0, 0, null), day: null },
    { case: 'what was there before is not enough, and nothing comes', from: saving(99, 0, '2026-01-01'), day: null },
    { case: 'it was there before', from: saving(100, 0, null), day: '2026-11-25' },
    { case: 'so little that the calendar ends first', from: saving(0, 1, '2026-01-01'), cost: 3000, day: null },
    { case: 'from a 31st the day is clipped', from: saving(0, 10, '2026-08-31'), cost: 60, day: '2027-02-28' },
  ])('$case', ({ from, cost = 100, day: on }) => expect(savingsPlan(from, 0, [wish('a', cost)], day('2026-11-25')).wishes[0]?.paidForOn).toBe(on));

  test('more was spent than put by: said, and made up for first', () => {
    const plan = savingsPlan(saving(0, 1000, '2026-11-01'), 2500, [wish('a', 500)], day('2026-11-25'));
    expect([plan.leftMinor, plan.wishes[0]]).toEqual([-2500, { id: 'a', savedMinor: 0, lacksMinor: 500, paidForOn: '2027-02-01' }]);
  });
});

describe('whatever is saved and wished for', () => {
  const minor = fc.integer({ min: 0, max: 500_000 });
  const anySaving = fc.record({ savedBefore: minor, monthlyMinor: fc.integer({ min: 0, max: 50_000 }), savingSince: fc.option(anyDate(day('2020-01-01'), day('2026-11-25'))) });
  const anyWishes = fc.array(fc.option(minor, { freq: 6 }), { maxLength: 8 }).map((costs) => costs.map((cost, at) => wish(`w${at}`, cost)));
  const today = day('2026-11-25');
  const never = '9999';

  test('putting by more makes no day later', () => {
    fc.assert(fc.property(anySaving, minor, anyWishes, fc.integer({ min: 0, max: 20_000 }), (from, spent, list, more) => {
      const [before, after] = [savingsPlan(from, spent, list, today), savingsPlan({ ...from, monthlyMinor: from.monthlyMinor + more }, spent, list, today)];
      before.wishes.forEach((one, at) => expect((after.wishes[at]?.paidForOn ?? never) <= (one.paidForOn ?? never)).toBe(true));
    }));
  });

  test('two neighbours changing places keep the later of their days, and all others theirs', () => {
    fc.assert(fc.property(anySaving, minor, fc.array(minor, { minLength: 2, maxLength: 8 }), fc.nat(6), (from, spent, costs, n) => {
      const at = n % (costs.length - 1);
      const list = costs.map((cost, i) => wish(`w${i}`, cost));
      const swapped = list.map((one, i) => (i === at ? list[at + 1] : i === at + 1 ? list[at] : one) ?? one);
      const [before, after] = [savingsPlan(from, spent, list, today), savingsPlan(from, spent, swapped, today)];
      before.wishes.forEach((one, i) => { if (i !== at) expect(after.wishes[i]?.paidForOn).toBe(one.paidForOn); });
    }));
  });

  test('what is saved for the wishes is never more than what is left, and each is saved, lacking or both to the minor unit', () => {
    fc.assert(fc.property(anySaving, minor, anyWishes, (from, spent, list) => {
      const plan = savingsPlan(from, spent, list, today);
      const costs = list.reduce((sum, one) => sum + (one.costMinor ?? 0), 0);
      expect(plan.leftMinor).toBe(putBy(from, today) - spent);
      expect(plan.wishes.reduce((sum, one) => sum + one.savedMinor, 0)).toBe(Math.min(costs, Math.max(0, plan.leftMinor)));
      plan.wishes.forEach((one, at) => { if (one.lacksMinor !== null) expect(one.savedMinor + one.lacksMinor).toBe(list[at]?.costMinor); });
    }));
  });
});
