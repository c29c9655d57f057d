import type { Put } from './entry-kind.ts';
import type { Facts } from './facts.ts';
import type { Family } from './family.ts';

/** Facts with changes laid over them that are not written yet: to decide on a list of changes, each seeing the ones before. */
export interface OverlaidFacts extends Facts {
  lay(puts: readonly Put[]): void;
}

/** Lays changes over facts; the facts below stay as they are. Stamps are those of what is written. */
export function overlayFacts(below: Facts): OverlaidFacts {
  const laid = new Map<string, Map<string, Put>>();
  const over = (family: Family<unknown>) => laid.get(family.name) ?? new Map<string, Put>();
  const merged = <Value>(family: Family<Value>, standing: readonly Value[], car: string | null): readonly Value[] => {
    const changes = over(family);
    if (changes.size === 0) return standing;
    const kept = standing.filter((value) => !changes.has((value as { readonly id: string }).id));
    const added = [...changes.values()].filter((put) => put.value !== null && (car === null || put.car === car));
    return [...kept, ...added.map((put) => put.value as Value)].sort((a, b) => ((a as { id: string }).id < (b as { id: string }).id ? -1 : 1));
  };
  return {
    get: (family, id) => {
      const put = over(family).get(id);
      return put === undefined ? below.get(family, id) : (put.value as never);
    },
    ofCar: (family, car) => merged(family, below.ofCar(family, car), car),
    all: (family) => merged(family, below.all(family), null),
    stamps: (family, car) => below.stamps(family, car),
    lay: (puts) => {
      for (const put of puts) {
        const family = laid.get(put.family) ?? new Map<string, Put>();
        laid.set(put.family, family.set(put.id, put));
      }
    },
  };
}
