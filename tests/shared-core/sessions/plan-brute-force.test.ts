import { describe, expect, test } from 'vitest';
import type { Result } from '../../../shared-core/result/result.ts';
import type { PlanAnswer } from '../../../shared-core/sessions/plan-answer.ts';
import type { PlanInstanceAsWritten } from '../../../shared-core/sessions/plan-instance.ts';
import { bruteForcePlan } from './plan-brute-force.ts';
import { planFeatures } from './plan-features.ts';
import { smallPlan } from './plan-seeds.ts';
import { answered } from './plan-written.ts';

/** How many seeds are run; the storm sets more. */
const SEEDS = Number(process.env['STORM_SMALL_PLANS'] ?? 100);
/** What is said where not all that must be done can be. */
const IMPOSSIBLE = ['plan-must-do-no-day', 'plan-must-do-too-long', 'plan-must-do-not-all'];

describe('small plans, solved and tried out in every way', () => {
  const solved: { readonly written: PlanInstanceAsWritten; readonly answer: Result<PlanAnswer> }[] = [];

  test.each(Array.from({ length: SEEDS }, (_, i) => i + 1))('seed %i', async (seed) => {
    const written = smallPlan(seed);
    const answer = await answered(written);
    solved.push({ written, answer });
    const totalMinor = bruteForcePlan(written);
    if (totalMinor === null) expect(answer).toMatchObject({ ok: false, refusal: { code: expect.toBeOneOf(IMPOSSIBLE) as string } });
    else expect(answer).toMatchObject({ ok: true, value: { status: 'optimal', totalMinor, boundMinor: totalMinor } });
  });

  test('between them they use every feature', () => {
    const features = planFeatures(solved);
    expect(Math.min(...Object.values(features)), JSON.stringify(features)).toBeGreaterThanOrEqual(3);
  });
});

describe('the trying itself', () => {
  const plan: PlanInstanceAsWritten = {
    days: ['2027-01-09', '2027-01-16'],
    places: [{ id: 'home', openingMinor: 1500, minutesADay: 100, minuteMinor: 2 }],
    tasks: [
      { id: 'a', car: 'c1', minutes: 40, access: ['airbox'], mustDo: true, leftUndoneMinor: 0, costMinor: { home: [0, 250] } },
      { id: 'b', car: 'c1', minutes: 30, access: ['airbox'], leftUndoneMinor: 900, costMinor: { home: [null, 100] } },
    ],
    access: [{ car: 'c1', id: 'airbox', minutes: 25 }],
  };

  test.each([
    { case: 'both on the second day', plan, totalMinor: 1500 + 95 * 2 + 250 + 100, source: 'by hand: 40 + 30 + 25 minutes at 2; alone and one left: 1500 + 65 * 2 + 900 = 2530' },
    { case: 'room for one only', plan: { ...plan, places: plan.places.map((place) => ({ ...place, minutesADay: 94 })) }, totalMinor: 1500 + 65 * 2 + 900, source: 'by hand' },
    { case: 'no room for what must be done', plan: { ...plan, places: plan.places.map((place) => ({ ...place, minutesADay: 64 })) }, totalMinor: null, source: 'by hand: 40 + 25 minutes' },
    { case: 'its car must be left while the other is away', plan: { ...plan, cars: [{ id: 'c2', away: ['2027-01-16'] }], neverAll: [['c1', 'c2']] }, totalMinor: 1500 + 65 * 2 + 900, source: 'by hand: a on the first day for nothing, and b left' },
    { case: 'the other is away on another day', plan: { ...plan, cars: [{ id: 'c2', away: ['2027-01-09'] }], neverAll: [['c1', 'c2']] }, totalMinor: 1500 + 95 * 2 + 250 + 100, source: 'by hand, as above' },
    { case: 'its only car must always stay free', plan: { ...plan, neverAll: [['c1']] }, totalMinor: null, source: 'by hand' },
  ])('$case ($source)', ({ plan: one, totalMinor }) => {
    expect(bruteForcePlan(one)).toBe(totalMinor);
  });
});
