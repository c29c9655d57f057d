import { describe, expect, test } from 'vitest';
import type { StormOutcome } from './order-storm.ts';
import { stormOne } from './order-storm.ts';
import { testSolver } from './order-written.ts';

/** How many seeds are run; the storm sets more. */
const SEEDS = Number(process.env['STORM_ORDERS'] ?? 50);

describe('small orders, solved and tried out in every way', () => {
  const outcomes: StormOutcome[] = [];

  test.each(Array.from({ length: SEEDS }, (_, i) => i + 1))('seed %i', async (seed) => {
    const outcome = await stormOne(seed, testSolver);
    outcomes.push(outcome);
    expect(outcome.answer.status).toBe('optimal');
    expect(outcome.found).toEqual(outcome.brute);
    expect(outcome.faults).toEqual([]);
  });

  test('between them they use every feature', () => {
    const used = (feature: (outcome: StormOutcome) => boolean) => outcomes.filter(feature).length;
    const offer = (outcome: StormOutcome, id: string) => outcome.instance.offers.find((each) => each.id === id);
    const bought = (outcome: StormOutcome, is: (offer: StormOutcome['instance']['offers'][number], packs: number) => boolean) =>
      outcome.answer.lines.some(({ offer: id, packs }) => is(offer(outcome, id) ?? never(), packs));
    const met = (outcome: StormOutcome, is: (need: StormOutcome['instance']['needs'][number]) => boolean) =>
      outcome.instance.needs.some((need) => is(need) && outcome.answer.allocation.some((row) => row.need === need.id));
    const features = {
      kit: used((one) => bought(one, ({ part }) => part === 'kit')),
      breaks: used((one) => bought(one, ({ breaks }, packs) => breaks.some((each) => each.packs <= packs))),
      free: used((one) => one.answer.lines.length > 0 && one.answer.deliveryMinor === 0),
      minimum: used((one) => bought(one, ({ supplier }) => one.instance.suppliers.some(({ id, minimumMinor }) => id === supplier && minimumMinor > 0))),
      unmixed: used((one) => met(one, ({ mix }) => !mix)),
      step: used((one) => met(one, ({ step }) => step !== null)),
      shelf: used((one) => one.answer.allocation.some(({ from }) => from === 'shelf')),
      expired: used((one) => one.instance.shelf.some(({ expires }) => expires !== null && one.instance.needs.some(({ neededBy }) => neededBy > expires))),
      rank: used((one) => one.answer.unmet.some(({ code }) => code === 'not-enough')),
      later: used((one) => one.answer.later.length > 0),
      packs: used((one) => one.answer.lines.length > 1),
    };
    expect(Math.min(...Object.values(features)), JSON.stringify(features)).toBeGreaterThanOrEqual(5);
  });
});

function never(): never {
  throw new Error('a line without its offer');
}
