import type { NeedFacts, NeedSource, OrderFacts } from './order-facts.ts';
import { FROM_SHELF } from './order-instance.ts';

/**
 * Needs that the program need not tell apart, because they may take the same from the same sources. Either `count` needs of `units` each,
 * of which any number may be met; or, where all must be met, all of them as one of the sum (`count` 1).
 */
export interface NeedGroup {
  readonly members: readonly NeedFacts[];
  readonly units: number;
  readonly count: number;
}

/** Whether a need could be met if it were the only one, as far as can be seen without reckoning; one that may wait is always settled and not counted. */
export function isMeetable({ need, units, step, sources }: NeedFacts): boolean {
  return need.laterMinor === null && sources.length > 0 && (step === null || units % step === 0);
}

/**
 * Puts alike needs together. `allMet` says that every need that can be met will be: then ranks do not matter, nor how much each wants.
 *
 * @example groupNeeds(facts, true) // four cars that each want one of the same filter are one group
 */
export function groupNeeds(facts: OrderFacts, allMet: boolean): readonly NeedGroup[] {
  const groups = new Map<string, NeedFacts[]>();
  for (const need of facts.needs) {
    const key = likeness(facts, need, allMet);
    const known = groups.get(key);
    if (known === undefined) groups.set(key, [need]);
    else known.push(need);
  }
  return [...groups.values()].map((members): NeedGroup => {
    const [first] = members;
    if (first === undefined || !isPooled(first, allMet)) return { members, units: first?.units ?? 0, count: members.length };
    return { members, units: members.reduce((sum, { units }) => sum + units, 0), count: 1 };
  });
}

/** Whether only the sum of such needs matters: all are met, and by any parts. */
function isPooled(need: NeedFacts, allMet: boolean): boolean {
  return allMet && isMeetable(need) && (need.need.mix || partsOf(need.sources).length <= 1);
}

/** Needs with the same words here take the same from the same sources. */
function likeness(facts: OrderFacts, need: NeedFacts, allMet: boolean): string {
  const { rank, laterMinor, mix } = need.need;
  const shelf = need.sources.some(({ from }) => from === FROM_SHELF) ? facts.lots.filter(({ expires }) => expires < need.by).length : 0;
  const alone = isPooled(need, allMet) ? [] : [need.units, laterMinor, mix, allMet ? null : rank];
  return JSON.stringify([isMeetable(need), need.step, need.sources.map(({ part, from }) => [part, from]), shelf, alone]);
}

/** The different parts among sources. */
export function partsOf(sources: readonly NeedSource[]): readonly string[] {
  return [...new Set(sources.map(({ part }) => part))];
}
