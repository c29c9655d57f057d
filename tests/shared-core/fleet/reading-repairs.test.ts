import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gateReading, zOfReading } from '../../../shared-core/fleet/reading-judgement.ts';
import { suggestRepairs, type ReadingToRepair } from '../../../shared-core/fleet/reading-repairs.ts';
import { anyReadings, mustFit } from './usage-examples.ts';

const KM_IN_MILE = 1.609344;
const anyRank = expect.any(Number) as number;
const about = (value: number, decimals: number) => expect.closeTo(value, decimals) as number;
/** 35.592 km a day from 61 500 km: 62 568 is likely after 30 days. */
const usage = mustFit([{ day: 0, km: 61_500 }], null, 'none');
const typed = (value: number, more: Partial<ReadingToRepair> = {}) =>
  suggestRepairs({ usage, day: 30, value, kmPerUnit: 1, offsetKm: 0, atMostKm: null, ...more });

/** Whether one text becomes the other by one digit put in, left out or changed, or two neighbours swapped. */
function isOneSlip(from: string, to: string): boolean {
  const [long, short] = from.length >= to.length ? [from, to] : [to, from];
  if (long.length - short.length > 1) return false;
  if (long.length > short.length) return [...long].some((_, at) => long.slice(0, at) + long.slice(at + 1) === short);
  const differing = [...from].flatMap((digit, at) => (digit === to[at] ? [] : [at]));
  const [first, second] = differing;
  if (first === undefined || differing.length === 1) return differing.length === 1;
  return differing.length === 2 && second === first + 1 && from[first] === to[second] && from[second] === to[first];
}

describe('what may have been meant', () => {
  // Source: house method, section 6; the slips are made by hand from 62 500 or 63 000.
  test.each([
    { case: 'two digits swapped', value: 26_500, meant: 62_500, slip: 'swap' },
    { case: 'a unit: miles typed for km', value: 38_836, meant: 62_500, slip: 'unit' },
    { case: 'a unit: km typed as if the instrument showed miles', value: 100_584, meant: 62_500, slip: 'unit' },
    { case: 'a digit left out', value: 6257, meant: 62_570, slip: 'insert' },
    { case: 'a digit too many', value: 625_500, meant: 62_550, slip: 'delete' },
    { case: 'a wrong digit', value: 82_500, meant: 62_500, slip: 'substitute' },
  ])('$case', ({ value, meant, slip }) => {
    expect(typed(value)).toContainEqual({ value: meant, slip, rank: anyRank });
  });

  test('is ranked by |z| and the slip\'s cost', () => {
    // By hand: 63 000 is 1500 km in 30 days, z = 0.5786; a changed digit costs 0.7, two swapped nothing.
    expect(typed(93_000)[0]).toEqual({ value: 63_000, slip: 'substitute', rank: about(1.2786, 4) });
    expect(typed(36_000)[0]).toEqual({ value: 63_000, slip: 'swap', rank: about(0.5786, 4) });
  });

  test('is at most three values, each once, the likeliest first', () => {
    const repairs = typed(6250);
    expect(repairs).toHaveLength(3);
    expect(new Set(repairs.map(({ value }) => value)).size).toBe(3);
    expect(repairs.map(({ rank }) => rank)).toEqual(repairs.map(({ rank }) => rank).sort((a, b) => a - b));
  });

  test('is nothing where no one slip explains it', () => {
    expect(typed(999)).toEqual([]);
    expect(typed(0)).toEqual([]);
    expect(typed(Number.NaN)).toEqual([]);
  });

  test('is told once, by the cheaper of two slips that lead to it', () => {
    // By hand: 16 411 mi are 26 411 km, which a changed first digit gives as well.
    const used = mustFit([{ day: 0, km: 25_343 }], null, 'none');
    const offers = suggestRepairs({ usage: used, day: 30, value: 16_411, kmPerUnit: 1, offsetKm: 0, atMostKm: null });
    expect(offers.filter(({ value }) => value === 26_411)).toEqual([{ value: 26_411, slip: 'unit', rank: about(0, 2) }]);
  });

  test('is itself likely: |z| under 1.7', () => {
    // By hand: 33 * 35.592 * exp(1.7 * 0.5416) - 3 * 35.592 = 2842 km in 30 days.
    expect(typed(94_341).map(({ value }) => value)).toEqual([64_341]);
    expect(typed(94_343)).toEqual([]);
  });

  test('would pass the gate itself: not over 1500 km a day, however usual', () => {
    const courier = mustFit([{ day: 0, km: 0 }, { day: 365, km: 365_000 }], null, 'none');
    const offers = (value: number) => suggestRepairs({ usage: courier, day: 366, value, kmPerUnit: 1, offsetKm: 0, atMostKm: null });
    expect(offers(966_499).map(({ value }) => value)).toContain(366_499);
    expect(offers(966_501).map(({ value }) => value)).not.toContain(366_501);
  });

  test('has no leading zero', () => {
    // From 60 250, a swap would give 06 250; without the zero in front it is a digit too many.
    const small = mustFit([{ day: 0, km: 6150 }], null, 'none');
    expect(suggestRepairs({ usage: small, day: 3, value: 60_250, kmPerUnit: 1, offsetKm: 0, atMostKm: null })).toEqual([
      { value: 6250, slip: 'delete', rank: anyRank },
    ]);
  });

  test('works in the unit of the instrument and on replaced instruments', () => {
    // 38 836 mi are 62 500 km; on a new instrument 60 000 km were driven before.
    expect(typed(83_836, { kmPerUnit: KM_IN_MILE })[0]).toMatchObject({ value: 38_836, slip: 'swap' });
    expect(typed(5200, { offsetKm: 60_000 })[0]).toMatchObject({ value: 2500, slip: 'swap' });
  });

  test('never passes the next accepted reading', () => {
    expect(typed(36_000, { atMostKm: 62_999 }).map(({ value }) => value)).not.toContain(63_000);
    expect(typed(36_000, { atMostKm: 63_000 }).map(({ value }) => value)).toContain(63_000);
  });
});

describe('any car', () => {
  test('every offer is one slip away and likely by itself', () => {
    const any = fc.tuple(anyReadings, fc.integer({ min: 1, max: 400 }), fc.integer({ min: 0, max: 999_999 }));
    fc.assert(fc.property(any, ([readings, days, value]) => {
      const used = mustFit(readings);
      const day = used.lastDay + days;
      for (const repair of suggestRepairs({ usage: used, day, value, kmPerUnit: 1, offsetKm: 0, atMostKm: null })) {
        const meant = { day, km: repair.value };
        const isUnit = [value * KM_IN_MILE, value / KM_IN_MILE].some((other) => Math.abs(other - repair.value) <= 1);
        expect(isUnit || isOneSlip(String(value), String(repair.value))).toBe(true);
        expect(gateReading(used, meant)).toBeNull();
        expect(Math.abs(zOfReading(used, meant))).toBeLessThan(1.7);
      }
    }));
  });

  test('a swap undone is always offered where the true value was just the likely one', () => {
    const any = fc.tuple(fc.integer({ min: 20_000, max: 199_000 }), fc.integer({ min: 14, max: 300 }), fc.nat({ max: 3 }));
    fc.assert(fc.property(any, ([km, days, at]) => {
      const used = mustFit([{ day: 0, km }], null, 'none');
      const meant = Math.round(km + used.ratePerSeasonDay * days);
      const text = String(meant);
      const slipped = Number(text.slice(0, at) + (text[at + 1] ?? '') + (text[at] ?? '') + text.slice(at + 2));
      fc.pre(slipped !== meant && String(slipped).length === text.length);
      const offers = suggestRepairs({ usage: used, day: days, value: slipped, kmPerUnit: 1, offsetKm: 0, atMostKm: null });
      expect(offers[0]?.value).toBe(meant);
    }));
  });
});
