import type { Facts } from '../journal/facts.ts';
import { parts } from '../parts/part.ts';
import { leftOfLots } from '../records/shelf-left.ts';
import { lots } from '../parts/lot.ts';
import type { Wish } from './wish.ts';
import { openWishes } from './wish-state.ts';

/** The lots that are put aside, each with the one wish that it is for: the one wanted most. What is left of a lot when its wish has come true is free again. */
export function lotsAside(facts: Facts): ReadonlyMap<string, string> {
  return new Map(openWishes(facts).toReversed().flatMap((wish) => wish.lots.map((lot) => [lot, wish.id] as const)));
}

/** The lots that nothing else may take: those put aside for a wish that is not planned yet. Once it is, its own task takes them. */
export function lotsKeptBack(facts: Facts): ReadonlySet<string> {
  return new Set(openWishes(facts).flatMap((wish) => (wish.item === null ? wish.lots : [])));
}

/** A need of a wish: what it takes, and how much of that is put aside for it. */
export interface WishNeed {
  readonly specification: string;
  readonly quantity: number;
  readonly aside: number;
  /** What is still to be bought. */
  readonly lacking: number;
}

/** What of a wish's needs is put aside and what is not; a lot serves the first need that it meets and that still lacks something. */
export function wishNeeds(facts: Facts, wish: Wish): readonly WishNeed[] {
  const aside = lotsAside(facts);
  const own = wish.lots.filter((id) => aside.get(id) === wish.id);
  const left = new Map(own.length === 0 ? [] : leftOfLots(facts));
  const heaps = own.map((id) => ({ meets: lotMeets(facts, id), units: thousandths(left.get(id) ?? 0) }));
  return wish.needs.map(({ specification, quantity }) => {
    let lacking = thousandths(quantity);
    for (const heap of heaps.filter(({ meets }) => meets.includes(specification))) {
      const taken = Math.min(lacking, heap.units);
      heap.units -= taken;
      lacking -= taken;
    }
    return { specification, quantity, aside: (thousandths(quantity) - lacking) / 1000, lacking: lacking / 1000 };
  });
}

/** The specifications that a lot meets. */
export function lotMeets(facts: Facts, lot: string): readonly string[] {
  const part = facts.get(lots, lot)?.part;
  return part === undefined ? [] : (facts.get(parts, part)?.meets ?? []);
}

function thousandths(quantity: number): number {
  return Math.round(quantity * 1000);
}
