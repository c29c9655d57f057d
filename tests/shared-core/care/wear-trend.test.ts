import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../../shared-core/calendar/local-date.ts';
import { limitReached, wearTrend, type WearPoint, type WearScale } from '../../../shared-core/care/wear-trend.ts';
import { day } from '../calendar/day.ts';
import { normalFrom, seededChance } from './line-examples.ts';

/** Values measured one after another, a step of `along` apart unless said otherwise. */
function measured(values: readonly number[], steps: readonly number[] = values.map((_, at) => at)): readonly WearPoint[] {
  return values.map((value, at) => ({ date: addDays(day('2024-01-01'), at * 30), along: steps[at] ?? at, value }));
}

const tread: WearScale = { rises: false, error: 0.2 };
const stateOf = (values: readonly number[], scale = tread, steps?: readonly number[]) => wearTrend(measured(values, steps), scale).state;

describe('what measurements come to', () => {
  // Source: our own definition; slopes by hand.
  test.each([
    { case: 'nothing', values: [], state: 'too-few' },
    { case: 'one', values: [8], state: 'too-few' },
    { case: 'two with no distance between them', values: [8, 7.9], steps: [5, 5], state: 'too-few' },
    { case: 'two, a millimetre apart', values: [8, 7], state: 'wears' },
    { case: 'two that gauges might tell apart: 0.3 mm is less than 1.28 x 0.2 x root 2', values: [8, 7.7], state: 'flat' },
    { case: 'two that no gauge mistakes: 0.4 mm is more', values: [8, 7.6], state: 'wears' },
    { case: 'two that are equal', values: [8, 8], state: 'flat' },
    { case: 'better by less than gauges differ', values: [8, 8.3], state: 'flat' },
    { case: 'better by more', values: [8, 8.5], state: 'contradictory' },
    { case: 'better again and again', values: [5, 5.3, 5.6, 5.9], state: 'contradictory' },
    { case: 'a new part nobody told of, at the end', values: [8, 6, 4, 8], state: 'contradictory' },
    { case: 'a new part nobody told of, worn since', values: [8, 6, 4, 8, 6, 4], state: 'contradictory' },
    { case: 'a low value that may be a slip as well as the last of a part', values: [10, 7, 4, 6.5, 5], state: 'wears' },
    { case: 'one slip upwards in the middle', values: [8, 7, 9.9, 5, 4], state: 'wears' },
    { case: 'one slip downwards in the middle', values: [8, 2, 6.5, 6, 5.5], state: 'wears' },
    { case: 'one slip upwards at the end: nobody can tell', values: [8, 7, 6, 9], state: 'contradictory' },
  ])('$case: $state', ({ values, steps, state }) => {
    expect(stateOf(values, tread, steps)).toBe(state);
  });

  test('what rises is judged upside down', () => {
    const moisture: WearScale = { rises: true, error: 0.3 };
    expect([stateOf([1, 2, 3], moisture), stateOf([3, 2, 1], moisture), stateOf([1, 1.2], moisture)]).toEqual(['wears', 'contradictory', 'flat']);
    // By hand: 1.2816 x 0.3 / root(2) to either side.
    expect(wearTrend(measured([1, 2, 3]), moisture)).toMatchObject({ line: { slope: 1, intercept: 1 }, band: { low: expect.closeTo(0.7281, 3) as number, high: expect.closeTo(1.2719, 3) as number } });
  });

  test('wear once seen stays seen where a measurement confirms it, and not where it does not', () => {
    const steps = [0, 1, 2, 3];
    const seen = wearTrend(measured([7.9, 8.3, 8, 7.8], steps), tread);
    if (seen.state !== 'wears') throw new Error(seen.state);
    const foreseen = seen.line.intercept + seen.line.slope * 3.3;
    expect(stateOf([7.9, 8.3, 8, 7.8, foreseen], tread, [...steps, 3.3])).toBe('wears');
    expect(stateOf([7.9, 8.3, 8, 7.8, foreseen + 0.25], tread, [...steps, 3.3])).toBe('flat');
  });

  test('a value that the line foresaw is no step upwards, though two low ones come before it', () => {
    const steps = [0, 1, 2, 3, 4, 5, 5.2];
    const low = [8, 7.5, 7, 6.5, 6, 5, 4.9];
    const fine = { rises: false, error: 0.05 };
    const trend = wearTrend(measured(low, steps), fine);
    if (trend.state !== 'wears') throw new Error(trend.state);
    const foreseen = trend.line.intercept + trend.line.slope * 5.3;
    expect(foreseen).toBeGreaterThan(5.15);
    expect(stateOf([...low, foreseen], fine, [...steps, 5.3])).toBe('wears');
    expect(stateOf([...low, foreseen + 0.3], fine, [...steps, 5.3])).toBe('contradictory');
  });

  test('a contradiction names the two measurements', () => {
    const values = measured([8, 6, 4, 8, 6, 4]);
    expect(wearTrend(values, tread)).toEqual({ state: 'contradictory', from: values[2], to: values[3] });
    expect(wearTrend(measured([8, 8.5]), tread)).toMatchObject({ from: { value: 8 }, to: { value: 8.5 } });
  });

  test('the band of two points is what the gauges allow', () => {
    // By hand: 1.2816 x 0.2 / root(0.5) over one step.
    const trend = wearTrend(measured([8, 7]), tread);
    const least = (1.2816 * 0.2) / Math.sqrt(0.5);
    expect(trend).toMatchObject({ line: { slope: -1, intercept: 8 }, band: { low: expect.closeTo(-1 - least, 12) as number, high: expect.closeTo(-1 + least, 12) as number } });
  });

  test('the band of exact points far apart is narrower, that of scattered ones goes by their ranks', () => {
    const exact = wearTrend(measured([8, 7, 6, 5]), tread);
    // By hand: the squares from the mean of 0, 1, 2, 3 sum to 5.
    expect(exact).toMatchObject({ band: { low: expect.closeTo(-1 - (1.2816 * 0.2) / Math.sqrt(5), 12) as number } });
    // All six slopes: -3, -3, -2, -1.5, -1 and 0 (by hand): four points give them all, and the gauges less.
    expect(wearTrend(measured([9, 6, 6, 3]), tread)).toMatchObject({ line: { slope: -1.75 - 0 }, band: { low: -3, high: 0 } });
  });
});

describe('where the limit is reached', () => {
  test('by two points: a line through them, and the two that the gauges allow through their middle', () => {
    // By hand: 8 at 0 and 7 at 1 reach 1.6 at 6.4; the middle point is 7.5 at 0.5.
    const least = (1.2816 * 0.2) / Math.sqrt(0.5);
    expect(limitReached(measured([8, 7]), 1.6, tread)).toEqual({
      earliest: expect.closeTo(0.5 + 5.9 / (1 + least), 10) as number, likely: expect.closeTo(6.4, 10) as number, latest: expect.closeTo(0.5 + 5.9 / (1 - least), 10) as number,
    });
  });

  test('never, where the flattest line does not lead there', () => {
    expect(limitReached(measured([9, 6, 6, 3]), 1.6, tread)).toMatchObject({ likely: expect.any(Number) as number, latest: null });
  });

  test('a rising value to a limit above it', () => {
    expect(limitReached(measured([1, 2]), 3, { rises: true, error: 0 })).toEqual({ earliest: 2, likely: 2, latest: 2 });
  });

  test('no line, no place', () => {
    expect([limitReached([], 1.6, tread), limitReached(measured([8]), 1.6, tread), limitReached(measured([8, 8.5]), 1.6, tread)]).toEqual([null, null, null]);
  });
});

/** Measurements of something that wears evenly, each off by chance, at uneven places. */
const worn = fc.record({ seed: fc.integer(), count: fc.integer({ min: 2, max: 14 }), noise: fc.constantFrom(0.05, 0.1, 0.2, 0.4), error: fc.constantFrom(0.05, 0.2) }).map(({ seed, count, noise, error }) => {
  const chance = seededChance(seed);
  const normal = normalFrom(chance);
  let along = 0;
  const points = Array.from({ length: count }, (_, at): WearPoint => {
    along += 200_000 + Math.round(chance() * 1_000_000);
    return { date: addDays(day('2020-01-01'), at * 60), along, value: Math.round((8 - 0.4e-6 * along + noise * normal()) * 100) / 100 };
  });
  return { points, scale: { rises: false, error } };
});

describe('in general', () => {
  test('a second measurement at the place of the last, on the line, does not push the window away', () => {
    const points = measured([8.11, 7.45, 7.4, 7.45]).map((point, at) => ({ ...point, along: [287_921, 1_143_548, 1_704_222, 1_980_281][at] ?? 0 }));
    const trend = wearTrend(points, tread);
    if (trend.state !== 'wears') throw new Error('it wears');
    const again = { date: day('2026-01-01'), along: 1_980_281, value: trend.line.intercept + trend.line.slope * 1_980_281 };
    const [before, after] = [limitReached(points, 1.6, tread), limitReached([...points, again], 1.6, tread)];
    expect(before?.latest).toBeCloseTo(66_742_406, 0);
    expect(after?.latest).toBeCloseTo(66_742_406, 0);
    expect(after?.likely).toBeCloseTo(66_742_406, 0);
  });

  test('a later measurement on the line never widens the window, nor hides the wear', () => {
    fc.assert(fc.property(worn, fc.integer({ min: 0, max: 2_000_000 }), ({ points, scale }, further) => {
      const trend = wearTrend(points, scale);
      fc.pre(trend.state === 'wears');
      const along = (points.at(-1)?.along ?? 0) + further;
      const more = [...points, { date: day('2026-01-01'), along, value: trend.line.intercept + trend.line.slope * along }];
      expect(wearTrend(more, scale).state).toBe('wears');
      const [before, after] = [limitReached(points, 1.6, scale), limitReached(more, 1.6, scale)];
      expect(after?.earliest).toBeGreaterThanOrEqual((before?.earliest ?? 0) - 1e-3);
      expect(after?.latest ?? Infinity).toBeLessThanOrEqual((before?.latest ?? Infinity) + 1e-3);
    }), { numRuns: 4000 });
  });

  test('the edges stand in order about the likely place', () => {
    fc.assert(fc.property(worn, ({ points, scale }) => {
      fc.pre(wearTrend(points, scale).state === 'wears');
      const reached = limitReached(points, 1.6, scale);
      expect(reached?.earliest).toBeLessThanOrEqual(reached?.likely ?? -1);
      expect(reached?.likely).toBeLessThanOrEqual(reached?.latest ?? Infinity);
    }));
  });

  test('moved along, everything moves along', () => {
    fc.assert(fc.property(worn, fc.integer({ min: -1e6, max: 1e8 }), ({ points, scale }, by) => {
      const here = limitReached(points, 1.6, scale);
      const there = limitReached(points.map((point) => ({ ...point, along: point.along + by })), 1.6, scale);
      for (const edge of ['earliest', 'likely', 'latest'] as const) {
        const [a, b] = [here?.[edge] ?? null, there?.[edge] ?? null];
        if (a === null || b === null) expect(a).toBe(b);
        else expect(Math.abs(b - a - by)).toBeLessThan(2 + Math.abs(a) * 1e-6);
      }
    }));
  });

  test('a nearer limit is reached no later', () => {
    fc.assert(fc.property(worn, ({ points, scale }) => {
      fc.pre(wearTrend(points, scale).state === 'wears');
      const [far, near] = [limitReached(points, 1.6, scale), limitReached(points, 3, scale)];
      expect(near?.likely).toBeLessThanOrEqual(far?.likely ?? 0);
    }));
  });
});

describe('the window keeps what it promises', () => {
  // Measured here, with gauges that differ as much as is assumed: 4000 tyres each, truth at 16, seeds fixed.
  test.each([
    { count: 2, least: 0.77, most: 0.83 }, { count: 3, least: 0.8, most: 0.89 }, { count: 4, least: 0.9, most: 0.97 }, { count: 6, least: 0.85, most: 0.93 }, { count: 12, least: 0.79, most: 0.88 },
  ])('$count measurements: the truth lies inside four times in five, or oftener', ({ count, least, most }) => {
    const chance = seededChance(count);
    const normal = normalFrom(chance);
    let [inside, all] = [0, 0];
    for (let tyre = 0; tyre < 4000; tyre += 1) {
      let along = 0;
      const points = Array.from({ length: count }, () => ({ date: day('2024-01-01'), along: (along += (10 / count) * (0.5 + chance())), value: 8 - 0.4 * along + 0.2 * normal() }));
      if (wearTrend(points, tread).state !== 'wears') continue;
      const reached = limitReached(points, 1.6, tread);
      all += 1;
      if ((reached?.earliest ?? Infinity) <= 16 && 16 <= (reached?.latest ?? Infinity)) inside += 1;
    }
    expect(all).toBeGreaterThan(3900);
    expect(inside / all).toBeGreaterThan(least);
    expect(inside / all).toBeLessThan(most);
  });
});
