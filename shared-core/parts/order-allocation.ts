import { shareFlow, type FlowSink } from '../integer-program/share-flow.ts';
import { must } from '../result/assert.ts';
import type { OrderChoice } from './order-choice.ts';
import type { NeedFacts, NeedSource, OrderFacts, TakenUnits } from './order-facts.ts';
import { FROM_SHELF } from './order-instance.ts';

/** Who gets what from where, one row for each need, part and source; and what is left of each part. All in whole units. */
export interface OrderShares {
  readonly taken: readonly TakenUnits[];
  readonly left: readonly { readonly part: string; readonly units: number }[];
}

/** A heap of one part: a lot on the shelf, or what the packs of an offer hold of it. */
interface Heap extends NeedSource {
  readonly holds: number;
  readonly expires: number;
}

/** So many units wanted by a need, from the heaps of some sources. */
interface Want {
  readonly need: NeedFacts;
  readonly units: number;
  readonly sources: readonly NeedSource[];
}

/**
 * Shares shelf and packs among the needs to be met, exactly and in whole units; null where they do not suffice. What expires first is used
 * first, then what keeps, then what is bought.
 */
export function shareOrder(facts: OrderFacts, choice: OrderChoice): OrderShares | null {
  const heaps = heapsOf(facts, choice);
  const wants = facts.needs.filter(({ need }) => choice.met.has(need.id)).flatMap((need) => wantsOf(need, choice));
  const shares = shareFlow(heaps, sinksOf(wants, heaps));
  if (shares === null) return null;
  const taken = new Map<string, TakenUnits>();
  const used = new Map<string, number>();
  for (const { source, sink, amount } of shares) {
    const { part, from } = must(heaps[source], 'heap');
    const need = must(wants[sink], 'want').need.need.id;
    const key = JSON.stringify([need, part, from]);
    taken.set(key, { need, part, from, units: (taken.get(key)?.units ?? 0) + amount });
    used.set(part, (used.get(part) ?? 0) + amount);
  }
  return { taken: [...taken.values()], left: leftOf(facts, heaps, used) };
}

function heapsOf(facts: OrderFacts, choice: OrderChoice): readonly Heap[] {
  const packs = new Map(choice.lines.map((line) => [line.offer, line.packs]));
  const lots = facts.lots.map(({ part, units, expires }) => ({ part, from: FROM_SHELF, holds: units, expires }));
  const bought = facts.offers.flatMap(({ offer, gives }) =>
    [...gives].map(([part, units]) => ({ part, from: offer.id, holds: units * (packs.get(offer.id) ?? 0), expires: Infinity })),
  );
  const held = bought.filter(({ holds }) => holds > 0);
  // Where nothing bought may be left over, all of it goes first: earlier heaps are emptied as far as the rest allows.
  return facts.instance.noLeftovers === true ? [...held, ...lots] : [...lots, ...held];
}

/** A need with a step takes what was chosen, source by source; another takes its whole from any of its sources, of the chosen part if there is one. */
function wantsOf(need: NeedFacts, choice: OrderChoice): readonly Want[] {
  if (need.step !== null) {
    return choice.stepped.filter((taken) => taken.need === need.need.id).map((taken) => ({ need, units: taken.units, sources: [taken] }));
  }
  const part = choice.parts.get(need.need.id);
  return [{ need, units: need.units, sources: need.sources.filter((source) => part === undefined || source.part === part) }];
}

function sinksOf(wants: readonly Want[], heaps: readonly Heap[]): readonly FlowSink[] {
  const at = new Map<string, number[]>();
  heaps.forEach(({ part, from }, heap) => {
    const key = JSON.stringify([part, from]);
    const known = at.get(key);
    if (known === undefined) at.set(key, [heap]);
    else known.push(heap);
  });
  return wants.map(({ need, units, sources }) => ({
    wants: units,
    from: sources.flatMap(({ part, from }) => at.get(JSON.stringify([part, from])) ?? []).filter((heap) => (heaps[heap]?.expires ?? 0) >= need.by),
  }));
}

function leftOf(facts: OrderFacts, heaps: readonly Heap[], used: ReadonlyMap<string, number>): OrderShares['left'] {
  const held = new Map<string, number>();
  for (const { part, holds } of heaps) held.set(part, (held.get(part) ?? 0) + holds);
  return facts.instance.parts.flatMap(({ id }) => {
    const units = (held.get(id) ?? 0) - (used.get(id) ?? 0);
    return units > 0 ? [{ part: id, units }] : [];
  });
}
