import type { LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import { completionsOf } from '../records/completions-of-records.ts';
import { workRecords } from '../records/work-record.ts';
import { refuse, ok, type Result } from '../result/result.ts';
import { wishes, type Wish } from './wish.ts';

/** Where a wish stands: one saves for it, it is planned, it came true, or it is wanted no more. Nothing of it is stored. */
export const WISH_STATES = ['saving', 'planned', 'fulfilled', 'let-go'] as const;
export type WishState = (typeof WISH_STATES)[number];

/** The day on which a wish came true: its item was first done, by the work records. Null where it did not. */
export function fulfilledOn(facts: Facts, wish: Wish): LocalDate | null {
  const item = wish.item === null ? null : facts.get(serviceItems, wish.item);
  if (item === null) return null;
  return completionsOf(item, facts.ofCar(workRecords, item.car), new Map(), { points: [], usage: null, firstRegistered: null })[0]?.date ?? null;
}

/** Where a wish stands now. */
export function wishState(facts: Facts, wish: Wish): WishState {
  if (fulfilledOn(facts, wish) !== null) return 'fulfilled';
  if (wish.letGoOn !== null) return 'let-go';
  return wish.item === null ? 'saving' : 'planned';
}

/** Whether money and parts are still to be put aside for a wish. */
export function isOpenWish(facts: Facts, wish: Wish): boolean {
  const state = wishState(facts, wish);
  return state === 'saving' || state === 'planned';
}

/** The wishes that are still to come true, the one wanted most first. */
export function openWishes(facts: Facts): readonly Wish[] {
  return facts.all(wishes).filter((wish) => isOpenWish(facts, wish)).sort(byPreference);
}

/** Wishes of one rank in the order in which they were made. */
export function byPreference(a: Wish, b: Wish): number {
  if (a.rank !== b.rank) return a.rank - b.rank;
  const [one, other] = [`${a.addedOn} ${a.id}`, `${b.addedOn} ${b.id}`];
  return one < other ? -1 : 1;
}

/** The last rank, for what is wished for now. */
export function lastRank(facts: Facts): number {
  return Math.min(999, Math.max(0, ...openWishes(facts).map((wish) => wish.rank)) + 1);
}

/** The wish of an id that is still to come true; refused where there is none, or it has come true or was let go. */
export function findOpenWish(facts: Facts, id: string, path: readonly string[] = ['wish']): Result<Wish> {
  const wish = facts.get(wishes, id);
  if (wish === null) return refuse('unknown-wish', {}, path);
  const state = wishState(facts, wish);
  if (state === 'fulfilled') return refuse('wish-fulfilled', { wish: wish.name }, path);
  return state === 'let-go' ? refuse('wish-let-go', { wish: wish.name }, path) : ok(wish);
}
