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

  const minutes = fc.integer({ min: 1, max: 600 });

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
