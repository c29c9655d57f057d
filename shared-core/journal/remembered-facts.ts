import type { Facts } from './facts.ts';
import type { Family } from './family.ts';

/** Facts that read each family once: for one answer that asks for the same again and again. What changes meanwhile is not seen. */
export function rememberedFacts(facts: Facts): Facts {
  const lists = new Map<string, readonly unknown[]>();
  const maps = new Map<string, ReadonlyMap<string, unknown>>();
  const all = <Value>(family: Family<Value>): readonly Value[] => {
    const known = lists.get(family.name) ?? facts.all(family);
    lists.set(family.name, known);
    return known as readonly Value[];
  };
  const byId = <Value>(family: Family<Value>): ReadonlyMap<string, unknown> => {
    const known = maps.get(family.name) ?? new Map(all(family).map((value) => [(value as { readonly id: string }).id, value]));
    maps.set(family.name, known);
    return known;
  };
  return {
    all,
    get: (family, id) => (byId(family).get(id) ?? null) as never,
    ofCar: (family, car) => facts.ofCar(family, car),
    stamps: (family, car) => facts.stamps(family, car),
  };
}
