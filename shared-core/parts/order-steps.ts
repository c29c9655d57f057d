import { FROM_SHELF } from './order-instance.ts';
import type { LotFacts, NeedFacts, OfferFacts } from './order-facts.ts';

/**
 * Lifts the step of needs that keep it anyway: where all that is wanted and all that is held, among needs that share sources directly or
 * through others, is a multiple of one step, whole sharing never splits a step. The solver then has far fewer whole numbers to find.
 *
 * Source: flows with whole capacities have whole solutions (Dantzig and Fulkerson 1956, from memory).
 */
export function liftSteps(needs: readonly NeedFacts[], offers: readonly OfferFacts[], lots: readonly LotFacts[]): readonly NeedFacts[] {
  const held = heldUnits(offers, lots);
  const lifted = new Map<NeedFacts, NeedFacts>();
  for (const together of sharingNeeds(needs)) {
    const steps = new Set(together.flatMap(({ step }) => step ?? []));
    const [step] = steps;
    if (step === undefined || steps.size > 1) continue;
    const figures = together.flatMap(({ units, sources }) => [units, ...sources.flatMap(({ from, part }) => held.get(sourceKey(from, part)) ?? [])]);
    if (figures.every((units) => units % step === 0)) for (const need of together) lifted.set(need, { ...need, step: null });
  }
  return needs.map((need) => lifted.get(need) ?? need);
}

function sourceKey(from: string, part: string): string {
  return JSON.stringify([from, part]);
}

/** What one pack, or each lot, holds of a part. */
function heldUnits(offers: readonly OfferFacts[], lots: readonly LotFacts[]): ReadonlyMap<string, readonly number[]> {
  const held = new Map<string, number[]>();
  for (const { offer, gives } of offers) for (const [part, units] of gives) held.set(sourceKey(offer.id, part), [units]);
  for (const { part, units } of lots) held.set(sourceKey(FROM_SHELF, part), [...(held.get(sourceKey(FROM_SHELF, part)) ?? []), units]);
  return held;
}

/** Needs in groups, so that needs of different groups have no source in common. */
function sharingNeeds(needs: readonly NeedFacts[]): readonly (readonly NeedFacts[])[] {
  const bySource = needsBySource(needs);
  const seen = new Set<NeedFacts>();
  return needs.flatMap((first) => (seen.has(first) ? [] : [reachedFrom(first, bySource, seen)]));
}

function needsBySource(needs: readonly NeedFacts[]): Map<string, NeedFacts[]> {
  const bySource = new Map<string, NeedFacts[]>();
  for (const need of needs) {
    for (const { from, part } of need.sources) {
      const known = bySource.get(sourceKey(from, part));
      if (known === undefined) bySource.set(sourceKey(from, part), [need]);
      else known.push(need);
    }
  }
  return bySource;
}

/** All needs reached from one by way of shared sources; a source that was followed is forgotten, so that each is followed once. */
function reachedFrom(first: NeedFacts, bySource: Map<string, NeedFacts[]>, seen: Set<NeedFacts>): readonly NeedFacts[] {
  const group = [first];
  seen.add(first);
  for (const need of group) {
    for (const { from, part } of need.sources) {
      const others = (bySource.get(sourceKey(from, part)) ?? []).filter((other) => !seen.has(other));
      bySource.delete(sourceKey(from, part));
      for (const other of others) seen.add(other);
      group.push(...others);
    }
  }
  return group;
}
