import { sameName } from '../../fleet/find-car.ts';
import type { Facts } from '../../journal/facts.ts';
import { standingOffers } from '../../parts/offer.ts';
import { numberKey, successorsOf, superseded } from '../../parts/part-number.ts';
import { parts, type Part } from '../../parts/part.ts';
import { suppliers, type Supplier } from '../../parts/supplier.ts';
import { ok, refuse, type Result } from '../../result/result.ts';

/** Finds the supplier and the part that a row of a price list names. */
export interface PriceNames {
  readonly supplier: (name: string) => Result<Supplier>;
  readonly part: (supplier: string, number: string, name: string) => Result<Part>;
}

/**
 * Looks names up in the household: a part by the supplier's own number, then by its maker's, older and newer ones included, then by its name.
 * What fits several parts fits none: nothing is merged by a guess.
 */
export function priceNames(facts: Facts): PriceNames {
  const all = facts.all(parts);
  const byId = new Map(all.map((part) => [part.id, part]));
  const replaced = facts.all(superseded);
  const offered = new Map<string, Set<string>>();
  for (const { supplier, number, part } of standingOffers(facts)) if (number !== null) add(offered, `${supplier} ${numberKey(number)}`, part);
  const own = new Map<string, Set<string>>();
  for (const { id, number } of all) if (number !== null) for (const one of [number, ...successorsOf(replaced, number)]) add(own, numberKey(one), id);
  for (const { old } of replaced) for (const later of successorsOf(replaced, old)) for (const id of own.get(numberKey(later)) ?? []) add(own, numberKey(old), id);
  const one = (ids: Iterable<string>, value: string): Result<Part> | null => {
    const [first, second] = [...ids];
    const part = first === undefined ? undefined : byId.get(first);
    if (part === undefined) return null;
    return second === undefined ? ok(part) : refuse('price-several-parts', { value });
  };
  return {
    supplier: (name) => {
      const found = facts.all(suppliers).find((supplier) => sameName(supplier.name, name));
      return found === undefined ? refuse('price-unknown-supplier', { supplier: name.slice(0, 60) }) : ok(found);
    },
    part: (supplier, number, name) => {
      const byNumber = number === '' ? null : (one(offered.get(`${supplier} ${numberKey(number)}`) ?? [], number) ?? one(own.get(numberKey(number)) ?? [], number));
      const named = byNumber ?? (name === '' ? null : one(all.filter((part) => sameName(part.name, name)).map((part) => part.id), name));
      return named ?? refuse('price-no-part', { value: (number === '' ? name : number).slice(0, 60) });
    },
  };
}

function add(map: Map<string, Set<string>>, key: string, value: string): void {
  map.set(key, (map.get(key) ?? new Set()).add(value));
}
