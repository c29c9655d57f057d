import { z } from 'zod';
import { serviceItems, serviceItemSet, type ServiceItem } from '../care/service-item.ts';
import { findCar } from '../fleet/find-car.ts';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { lots } from '../parts/lot.ts';
import { parts } from '../parts/part.ts';
import { specifications } from '../parts/specification.ts';
import { must } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { itemOfWish } from './plan-wish.ts';
import { wishes, wishSchema, wishSet, type Wish } from './wish.ts';
import { lotMeets } from './wish-aside.ts';
import { findOpenWish, lastRank } from './wish-state.ts';

const shape = wishSchema.shape;
const request = z.strictObject({
  id: shape.id.optional(),
  car: z.string().min(1).max(80).optional(),
  name: shape.name.optional(),
  needs: shape.needs.optional(),
  others: shape.others.optional(),
  place: shape.place.optional(),
  minutes: shape.minutes.optional(),
  access: shape.access.optional(),
  garagePrice: shape.garagePrice.optional(),
  note: shape.note.optional(),
});
type Request = z.output<typeof request>;

/** Makes a wish, wanted least so far; or changes one that is still to come true: only the fields given. What it is planned by changes with it. */
export const setWish = change({
  request,
  reply: z.object({ set: wishSchema }),
  decide: (facts, request, { today, newId }) => {
    const now = request.id === undefined ? null : facts.get(wishes, request.id);
    const wish = now === null ? made(facts, request, { id: request.id ?? newId(), addedOn: today }) : changed(facts, now, request);
    if (!wish.ok) return wish;
    const sound = checkWish(facts, wish.value);
    return sound.ok ? ok({ entries: wishEntries(facts, wish.value, request), reply: { set: wish.value } }) : sound;
  },
});

function made(facts: Facts, { car, name, ...rest }: Request, fresh: Pick<Wish, 'id' | 'addedOn'>): Result<Wish> {
  if (car === undefined) return refuse('wish-of-which-car', {}, ['car']);
  if (name === undefined) return refuse('wish-of-what', {}, ['name']);
  const found = findCar(facts, car);
  if (!found.ok) return found;
  const plain = { needs: [], others: [], place: 'home' as const, minutes: null, access: [], garagePrice: null, item: null, lots: [], letGoOn: null, note: '' };
  return ok({ ...plain, ...given(rest), ...fresh, car: found.value.id, name, rank: lastRank(facts) });
}

function changed(facts: Facts, now: Wish, { car, ...rest }: Request): Result<Wish> {
  const open = findOpenWish(facts, now.id, ['id']);
  if (!open.ok) return open;
  const found = car === undefined ? null : findCar(facts, car);
  if (found?.ok === false) return found;
  const moved = found !== null && found.value.id !== now.car;
  if (moved && now.item !== null) return refuse('wish-planned', { wish: now.name }, ['car']);
  return ok({ ...now, ...given(rest), id: now.id, car: found?.value.id ?? now.car });
}

/** The fields given, without those that are not. */
function given(rest: Omit<Request, 'car'>): Partial<Wish> {
  return Object.fromEntries(Object.entries(rest).filter(([, value]) => value !== undefined)) as Partial<Wish>;
}

/** Each need once, by a specification that is there; what is put aside for the wish still meets one. */
function checkWish(facts: Facts, { needs, lots: aside }: Wish): Result<null> {
  const strange = needs.findIndex(({ specification }) => facts.get(specifications, specification) === null);
  if (strange >= 0) return refuse('unknown-specification', { id: needs[strange]?.specification ?? '' }, ['needs', strange, 'specification']);
  const twice = needs.findIndex(({ specification }, at) => needs.findIndex((other) => other.specification === specification) < at);
  if (twice >= 0) return refuse('need-twice', { specification: needs[twice]?.specification ?? '' }, ['needs', twice, 'specification']);
  const idle = aside.find((lot) => !lotMeets(facts, lot).some((met) => needs.some((need) => need.specification === met)));
  return idle === undefined ? ok(null) : refuse('lot-meets-no-wish', { part: partOfLot(facts, idle) }, ['needs']);
}

/** What a lot is of, by name. */
export function partOfLot(facts: Facts, lot: string): string {
  const part = facts.get(lots, lot)?.part ?? '';
  return facts.get(parts, part)?.name ?? part;
}

/** A wish as it stands now, and with it the item that it is planned by, in what was changed of it. */
function wishEntries(facts: Facts, wish: Wish, request: Request): readonly NewEntry[] {
  const fields = Object.entries(itemOfWish(wish)).filter(([field]) => request[field as keyof Request] !== undefined);
  if (wish.item === null || fields.length === 0) return [newEntry(wishSet, wish)];
  const item = must(facts.get(serviceItems, wish.item), 'item of a wish');
  return [newEntry(serviceItemSet, { ...item, ...(Object.fromEntries(fields) as Partial<ServiceItem>) }), newEntry(wishSet, wish)];
}
