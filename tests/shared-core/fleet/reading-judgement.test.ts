import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gateReading, judgeReading, zOfDistance, zOfReading } from '../../../shared-core/fleet/reading-judgement.ts';
import { makeSeason } from '../../../shared-core/fleet/usage-season.ts';
import { anyReadings, mustFit } from './usage-examples.ts';

/** One reading and no season: 35.592 km a day, every figure below can be had with a pocket calculator. */
const one = mustFit([{ day: 0, km: 60_000 }], null, 'none');
/** A thousand km a day for a year. */
const courier = mustFit([{ day: 0, km: 0 }, { day: 365, km: 365_000 }], null, 'none');
const judge = (readings: readonly { day: number; km: number }[], day: number, km: number) =>
  judgeReading({ readings, candidate: { day, km }, declaredKmAYear: null, season: makeSeason('none') });

describe('z of a distance', () => {
  // Source: house method, section 6; by hand: ln((1500 + 106.776) / (1067.762 + 106.776)) / sqrt(0.05 + 8.4 / 90 + 0.15).
  test('1500 km in 30 days', () => {
    expect(zOfReading(one, { day: 30, km: 61_500 })).toBeCloseTo(0.5786, 4);
  });

  test('the likely distance is 0, a distance that goes back is infinitely far', () => {
    expect(zOfDistance(one, 10, 40, (30 * 13_000) / 365.25)).toBeCloseTo(0, 12);
    expect(zOfDistance(one, 10, 40, -1)).toBe(-Infinity);
  });

  test('the same day counts as one day, and no spread is taken for less than a week', () => {
    expect(zOfDistance(one, 10, 10, 300)).toBe(zOfDistance(one, 10, 11, 300));
    // By hand: ln((300 + 106.776) / (4 * 35.592)) / sqrt(0.05 + 8.4 / 67 + 0.15).
    expect(zOfDistance(one, 10, 11, 300)).toBeCloseTo(1.8401, 3);
  });
});

describe('gate', () => {
  // Source: house method, section 6; limits worked out by hand from the formula beside each.
  test.each([
    { case: 'one km less', usage: one, days: 30, km: -1, code: 'decrease' },
    { case: 'less on the same day', usage: one, days: 0, km: -1, code: 'decrease' },
    { case: 'nothing driven in a year: a car may rest', usage: one, days: 365, km: 0, code: null },
    { case: 'just under z = 3 in 30 days (5856.7 km)', usage: one, days: 30, km: 5856, code: null },
    { case: 'just over z = 3 in 30 days', usage: one, days: 30, km: 5858, code: 'too-high' },
    { case: 'far over z = 3 in a day (681 km), not 1200 km beyond the likely 35.6', usage: one, days: 1, km: 1235, code: null },
    { case: '1200 km beyond the likely in a day', usage: one, days: 1, km: 1236, code: 'too-high' },
    { case: 'over 1500 km a day, however usual', usage: courier, days: 1, km: 1501, code: 'too-high' },
    { case: '1500 km in a day', usage: courier, days: 1, km: 1500, code: null },
    { case: 'under 1500 km a day over two days', usage: courier, days: 2, km: 2998, code: null },
    { case: 'over 1500 km a day over two days', usage: courier, days: 2, km: 3001, code: 'too-high' },
    { case: 'more on the same day', usage: courier, days: 0, km: 1501, code: 'too-high' },
    { case: 'an extra digit', usage: one, days: 90, km: 570_000, code: 'too-high' },
  ])('$case: $code', ({ usage, days, km, code }) => {
    expect(gateReading(usage, { day: usage.lastDay + days, km: usage.lastKm + km })).toBe(code);
  });

  test('looks forward only', () => {
    expect(() => gateReading(one, { day: -1, km: 59_000 })).toThrow(/after the last/);
  });
});

describe('judging a reading', () => {
  const year = [{ day: 0, km: 50_000 }, { day: 90, km: 53_000 }, { day: 180, km: 56_000 }, { day: 270, km: 59_000 }];

  test('the first is taken', () => {
    expect(judge([], 10, 123_456)).toEqual({ state: 'accepted' });
  });

  test('a likely one is taken', () => {
    expect(judge(year, 300, 60_000)).toEqual({ state: 'accepted' });
  });

  test('one that falls is doubtful, beside the one it falls under', () => {
    const judged = judge(year, 300, 5900);
    expect(judged).toMatchObject({ state: 'doubtful', code: 'decrease', against: { day: 270, km: 59_000 }, fitsWithoutOther: false });
  });

  test('what was expected is told', () => {
    const judged = judge(year, 300, 600_000);
    if (judged.state !== 'doubtful' || judged.expected === null) throw new Error('expected a doubt with a band');
    expect(judged.expected.likely).toBeGreaterThan(59_900);
    expect(judged.expected.likely).toBeLessThan(60_100);
    expect(judged.expected.low).toBeLessThan(judged.expected.likely);
    expect(judged.expected.high).toBeGreaterThan(judged.expected.likely);
  });

  test('look back: where the next one fits without the last, the last is the likelier slip', () => {
    const slipTaken = [...year.slice(0, 3), { day: 270, km: 61_900 }];
    expect(judge(slipTaken, 300, 60_000)).toMatchObject({ code: 'decrease', against: { day: 270, km: 61_900 }, fitsWithoutOther: true, otherLikelier: true });
  });

  test('look back: a slip that is low but no fall without the last would be taken too, yet is less likely', () => {
    expect(judge(year, 300, 56_900)).toMatchObject({ code: 'decrease', against: { day: 270, km: 59_000 }, fitsWithoutOther: true, otherLikelier: false });
  });

  test('with one reading to compare nothing speaks for either', () => {
    expect(judge(year.slice(0, 1), 30, 49_000)).toMatchObject({ code: 'decrease', fitsWithoutOther: false });
  });
});

describe('a reading entered late', () => {
  const year = [{ day: 0, km: 50_000 }, { day: 90, km: 53_000 }, { day: 180, km: 56_000 }, { day: 190, km: 59_500 }];

  test.each([
    { case: 'between its neighbours', day: 45, km: 51_400, code: null },
    { case: 'under the one before', day: 45, km: 49_999, code: 'decrease' },
    { case: 'over the one after', day: 45, km: 53_001, code: 'above-later' },
    { case: 'over the one after, before all others', day: -45, km: 50_001, code: 'above-later' },
    { case: 'before all others', day: -45, km: 48_500, code: null },
    { case: 'so low that too much is left for the next', day: 88, km: 50_020, code: 'later-too-high' },
    { case: 'lower, on a day that has a reading', day: 90, km: 52_900, code: null },
    { case: 'much lower on that day', day: 90, km: 5300, code: 'decrease' },
    { case: 'higher on that day', day: 90, km: 53_050, code: null },
    { case: 'a day before, still low, though the next was', day: 89, km: 52_900, code: null },
  ])('$case: $code', ({ day, km, code }) => {
    const judged = judge(year, day, km);
    expect(judged.state === 'accepted' ? null : judged.code).toBe(code);
  });

  // Source: house method, section 6, step 3: more than 1500 km cannot be driven in a day.
  test.each([
    { case: '1500 km under another of that day', km: 78_500, code: null },
    { case: '1501 km under it', km: 78_499, code: 'same-day' },
    { case: 'a digit swapped or lost, yet above all earlier days', km: 70_500, code: 'same-day' },
  ])('$case: $code', ({ km, code }) => {
    const judged = judge([{ day: 0, km: 50_000 }, { day: 365, km: 60_000 }, { day: 1095, km: 80_000 }], 1095, km);
    expect(judged.state === 'accepted' ? null : judged.code).toBe(code);
  });

  test('of two on one day that no car can drive between, the earlier typed is named, and is the likelier slip where it is farther off', () => {
    const swapped = [{ day: 0, km: 50_000 }, { day: 365, km: 60_000 }, { day: 730, km: 79_500 }];
    expect(judge(swapped, 730, 70_200)).toMatchObject({ code: 'same-day', against: { day: 730, km: 79_500 }, fitsWithoutOther: true, otherLikelier: true });
    const right = [{ day: 0, km: 50_000 }, { day: 365, km: 60_000 }, { day: 730, km: 70_200 }];
    expect(judge(right, 730, 62_070)).toMatchObject({ code: 'same-day', against: { day: 730, km: 70_200 }, otherLikelier: false });
    expect(judge([{ day: 0, km: 80_000 }], 0, 50_100)).toMatchObject({ code: 'same-day', against: { day: 0, km: 80_000 }, fitsWithoutOther: false, otherLikelier: false });
  });

  test('is compared with the next one, which may be the slip', () => {
    const slipTaken = [{ day: 0, km: 50_000 }, { day: 90, km: 53_000 }, { day: 95, km: 53_100 }, { day: 270, km: 59_000 }];
    expect(judge(slipTaken, 93, 53_200)).toMatchObject({ code: 'above-later', against: { day: 95, km: 53_100 }, fitsWithoutOther: true });
  });

  test('what was out of line already is not the newcomer\'s fault', () => {
    const jump = [{ day: 0, km: 50_000 }, { day: 90, km: 70_000 }];
    expect(judge(jump.slice(0, 1), 90, 70_000)).toMatchObject({ code: 'too-high' });
    expect(judge(jump, 60, 52_000)).toEqual({ state: 'accepted' });
  });
});

describe('any car', () => {
  test('a later reading at or above the last and not above the likely one is always taken', () => {
    const any = fc.tuple(anyReadings, fc.integer({ min: 0, max: 900 }), fc.double({ min: 0, max: 1, noNaN: true }));
    fc.assert(fc.property(any, ([readings, days, part]) => {
      const usage = mustFit(readings);
      const likely = usage.ratePerSeasonDay * 0.9 * days;
      expect(gateReading(usage, { day: usage.lastDay + days, km: usage.lastKm + part * likely })).toBeNull();
    }));
  });
});
