import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import type { ClosingCar } from './closing-schema.ts';
import { partsOfItem } from './parts-sessions.ts';
import { said } from './plan-said.ts';
import { standingSupply } from './supply-taking.ts';

/** What a task takes off the shelf, and what of it is not there. */
export type TaskParts = Pick<ClosingCar, 'lots' | 'lacks'>;

/** A task of an item that takes something off the shelf. */
export interface TakingTask {
  readonly key: string;
  readonly item: string;
}

/**
 * What each task takes off the shelf as it stands, in the order given, over all cars of a session: what one takes the next cannot. What
 * came after the day of the work cannot have been used in it, and what is on the way was not used either.
 */
export function closingParts(facts: Facts, tasks: readonly TakingTask[], date: LocalDate, today: LocalDate): ReadonlyMap<string, TaskParts> {
  const standing = standingSupply(facts, today);
  const supply = { ...standing, lines: [], shelf: standing.shelf.filter(({ lot }) => lot.receivedOn <= date) };
  return new Map(tasks.map(({ key, item }) => {
    const needs = partsOfItem(facts, item, date, supply);
    return [key, {
      lots: needs.flatMap((need) => need.taken.map(({ lot, partName, where, quantity }) => ({ task: key, lot, partName, where, unit: need.unit, quantity, for: need.itemName }))),
      lacks: needs.flatMap((need) => (need.lacking === 0 ? [] : [{ task: key, ...said({ key: 'closing-lacks', values: { quantity: need.lacking, unit: need.unit, specification: need.specificationName } }) }])),
    }];
  }));
}
