import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { learnedMinutes } from '../../../shared-core/work/learned-minutes.ts';
import { normalFrom, seededChance } from '../care/line-examples.ts';

describe('how long a task takes', () => {
  // Source: our own definition; by hand: e^(ln 60 -+ ln 1.5 * sqrt 2) for the start alone, the geometric mean of 60 and 30 for one time.
  test.each([
    { case: 'nothing known', start: null, own: [], expected: null },
    { case: 'the start value alone', start: 60, own: [], expected: { minutes: 60, low: 34, high: 106, own: 0 } },
    { case: 'one time of one\'s own counts as much as the start', start: 60, own: [30], expected: { minutes: 42, own: 1 } },
    { case: 'times alone', start: null, own: [30, 30], expected: { minutes: 30, own: 2 } },
    { case: 'the newest ten', start: null, own: [...Array.from({ length: 30 }, () => 500), ...Array.from({ length: 10 }, () => 20)], expected: { minutes: 20, own: 10 } },
  ])('$case', ({ start, own, expected }) => {
    const learned = learnedMinutes(start, own);
    if (expected === null) expect(learned).toBeNull();
    else expect(learned).toMatchObject(expected);
  });

  // By hand: ln(1500/45) and ln(1/45) are 7.8 and 8.5 units of 0.4474 off (ln 1.5 / 1.2816 * sqrt 2), of weight 2 (8 - 7.8) / (4 * 7.8) = 0.01 and 0.
  test.each([
    { case: 'a minute for a press too many', start: 45, own: [1], minutes: 45 },
    { case: 'a night left running', start: 45, own: [1500], minutes: 47 },
    { case: 'a night left running among times that agree', start: 45, own: [40, 45, 1500, 50], minutes: 45 },
    { case: 'among times alone', start: null, own: [40, 45, 1500, 50, 45], minutes: 45 },
  ])('one slip moves it little: $case', ({ start, own, minutes: expected }) => {
    expect(learnedMinutes(start, own)?.minutes).toBe(expected);
  });

  test('times that are worlds apart leave it open, in minutes that can be shown', () => {
    for (const learned of [learnedMinutes(null, [1, 6000]), learnedMinutes(1, [6000, 6000])]) {
      expect(learned?.high).toBeGreaterThan(2000);
      expect(learned?.high).toBeLessThan(10_000);
    }
  });

  const minutes = fc.integer({ min: 1, max: 600 });
  const said = fc.integer({ min: 30, max: 600 });
  const agreeing = fc.array(fc.double({ min: 0.8, max: 1.25, noNaN: true }), { maxLength: 9 });

  // By hand: at 4 units a time has weight a half and moves two equal ones by (4 / 2) / (1 + 1 / 2) = 4/3 units, e^(0.4474 * 4/3) = 1.82; half a minute of rounding on each side beside it.
  test('one time, whatever it says, moves what others agree on by a bounded factor; beyond 60 times as long or short not at all', () => {
    fc.assert(fc.property(said, agreeing, fc.integer({ min: 1, max: 100_000 }), (start, parts, slip) => {
      const own = parts.map((part) => part * start);
      const [without, after] = [learnedMinutes(start, own)?.minutes ?? 0, learnedMinutes(start, [...own, slip])?.minutes ?? 0];
      expect(after).toBeLessThanOrEqual((without + 0.5) * 1.82 + 0.5);
      expect(after).toBeGreaterThanOrEqual((without - 0.5) / 1.82 - 0.5);
      if (Math.abs(Math.log(slip / start)) > Math.log(60)) expect(after).toBe(without);
    }), { numRuns: 1000 });
  });

  // By hand: three equal times and a start value of weight w at distance d, w d at most 2 units: 2 * 0.4474 / (3 + 1/2) = 0.2557, e^0.2557 = 1.29.
  test('three times that agree carry it, whatever was said', () => {
    fc.assert(fc.property(said, fc.integer({ min: 30, max: 6000 }), (start, time) => {
      const learned = learnedMinutes(start, [time, time, time])?.minutes ?? 0;
      expect(learned).toBeLessThanOrEqual(time * 1.3 + 0.5);
      expect(learned).toBeGreaterThanOrEqual(time / 1.3 - 0.5);
    }), { numRuns: 1000 });
  });

  test('the likely lies between the ends, within what was said and measured; a time more makes the spread of equal times no wider', () => {
    fc.assert(fc.property(minutes, fc.array(minutes, { maxLength: 12 }), (start, own) => {
      const learned = learnedMinutes(start, own);
      if (learned === null) throw new Error('a start value is known');
      expect(learned.low).toBeLessThanOrEqual(learned.minutes);
      expect(learned.high).toBeGreaterThanOrEqual(learned.minutes);
      const heard = [start, ...own];
      expect(learned.minutes).toBeGreaterThanOrEqual(Math.min(...heard));
      expect(learned.minutes).toBeLessThanOrEqual(Math.max(...heard));
      const [few, more] = [learnedMinutes(start, [start]), learnedMinutes(start, [start, start])];
      expect((more?.high ?? 0) - (more?.low ?? 0)).toBeLessThanOrEqual((few?.high ?? 0) - (few?.low ?? 0));
    }));
  });

  test('twice as long throughout is twice as long', () => {
    fc.assert(fc.property(fc.integer({ min: 30, max: 300 }), fc.array(fc.integer({ min: 30, max: 300 }), { maxLength: 8 }), (start, own) => {
      const [one, two] = [learnedMinutes(start, own), learnedMinutes(2 * start, own.map((time) => 2 * time))];
      expect(Math.abs((two?.minutes ?? 0) - 2 * (one?.minutes ?? 0))).toBeLessThanOrEqual(1);
    }));
  });

  // Seeded: a person whose own pace is 0.6 to 1.6 of the start value, each time off by a fifth to two fifths.
  test.each([1, 3, 6, 10])('after %i times the next one lies between the ends four times in five, or oftener', (count) => {
    const chance = seededChance(20_261_130 + count);
    const normal = normalFrom(chance);
    let inside = 0;
    const runs = 4000;
    for (let run = 0; run < runs; run += 1) {
      const [pace, spread] = [0.6 + chance(), 0.2 + 0.2 * chance()];
      const time = () => Math.max(1, 60 * pace * Math.exp(spread * normal()));
      const learned = learnedMinutes(60, Array.from({ length: count }, time));
      const next = time();
      if (learned !== null && learned.low <= next && next <= learned.high) inside += 1;
    }
    expect(inside / runs).toBeGreaterThanOrEqual(0.78);
    expect(inside / runs).toBeLessThanOrEqual(0.95);
  });
});
