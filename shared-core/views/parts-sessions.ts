import { daysBetween, later, type LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { comingSupply, type ComingLine } from '../parts/coming-supply.ts';
import { parts } from '../parts/part.ts';
import { specifications } from '../parts/specification.ts';
import { pickLots } from '../records/pick-lots.ts';
import { standingLots, type StandingLot } from '../records/shelf-left.ts';
import type { Session } from '../sessions/session.ts';
import { plannedItems } from './household-needs.ts';
import type { SessionParts } from './parts-view-schema.ts';
import { toolsLacking } from './tools-lacking.ts';

const rounded = (quantity: number) => Math.round(quantity * 1000) / 1000;

/** What is still free to be taken: each session takes its own before the next. */
interface Supply {
  shelf: readonly StandingLot[];
  readonly coming: Map<string, number>;
}

/** What each session at home, in order of day, takes off the shelf, has on the way by then, and lacks. What one takes the next cannot. */
export function sessionParts(facts: Facts, today: LocalDate): SessionParts[] {
  const planned = plannedItems(facts, today);
  const bySession = new Map<string, { readonly session: Session; readonly items: string[] }>();
  for (const [item, { session, atHome }] of planned) {
    if (!atHome) continue;
    const known = bySession.get(session.id);
    if (known === undefined) bySession.set(session.id, { session, items: [item] });
    else known.items.push(item);
  }
  const coming = comingSupply(facts, today);
  const supply: Supply = { shelf: standingLots(facts), coming: new Map(coming.map((one) => [`${one.order} ${one.line.id}`, one.packs * one.line.quantity])) };
  return [...bySession.values()].sort((a, b) => (a.session.day < b.session.day ? -1 : a.session.day > b.session.day ? 1 : a.session.id < b.session.id ? -1 : 1)).map(({ session, items }) => ({
    session: session.id,
    day: session.day,
    daysAhead: daysBetween(today, session.day),
    needs: [...items].sort().flatMap((item) => needsOf(facts, item, session.day, supply, coming)),
    toolsLacking: toolsLacking(facts, items.map((item) => ({ item, day: session.day })), today),
  }));
}

function needsOf(facts: Facts, id: string, day: LocalDate, supply: Supply, coming: readonly ComingLine[]): SessionParts['needs'] {
  const item = facts.get(serviceItems, id);
  return (item?.needs ?? []).map(({ specification, quantity }) => {
    const picked = pickLots(facts, supply.shelf, { specification, quantity }, day);
    const taken = new Map(picked.taken.map((one) => [one.lot, one.quantity]));
    supply.shelf = supply.shelf.map((one) => ({ ...one, left: rounded(one.left - (taken.get(one.lot.id) ?? 0)) }));
    const onWay = takeComing(facts, specification, picked, day, supply, coming);
    const named = facts.get(specifications, specification);
    return {
      car: item?.car ?? '', carName: facts.get(cars, item?.car ?? '')?.name ?? '', item: id, itemName: item?.name ?? id, specification, specificationName: named?.name ?? specification, unit: named?.unit ?? '', quantity,
      taken: picked.taken.map((one) => ({ ...one, partName: facts.get(parts, one.part)?.name ?? one.part, where: supply.shelf.find((lot) => lot.lot.id === one.lot)?.lot.where ?? null })),
      coming: onWay.quantity, comingOn: onWay.on, lacking: rounded(picked.lacking - onWay.quantity),
    };
  });
}

/** What of the rest is here the day before: of the part that is begun, where parts are not mixed. */
function takeComing(facts: Facts, specification: string, picked: ReturnType<typeof pickLots>, day: LocalDate, supply: Supply, coming: readonly ComingLine[]): { readonly quantity: number; readonly on: LocalDate | null } {
  const begun = facts.get(specifications, specification)?.mix === true ? null : (picked.taken[0]?.part ?? null);
  let [wanted, on, only]: [number, LocalDate | null, string | null] = [picked.lacking, null, begun];
  for (const one of coming.filter((line) => line.on < day)) {
    const contents = facts.get(parts, one.line.part)?.contains ?? [];
    const meets = (part: string) => facts.get(parts, part)?.meets.includes(specification) === true && (only === null || only === part);
    const part = contents.length === 0 ? (meets(one.line.part) ? one.line.part : null) : (contents.find((inside) => meets(inside.part))?.part ?? null);
    if (part === null || wanted <= 0) continue;
    const inside = contents.find((each) => each.part === part);
    const key = inside === undefined ? `${one.order} ${one.line.id}` : `${one.order} ${one.line.id} ${part}`;
    const free = supply.coming.get(key) ?? (inside === undefined ? 0 : one.packs * one.line.quantity * inside.quantity);
    const some = Math.min(wanted, free);
    if (some <= 0) continue;
    supply.coming.set(key, rounded(free - some));
    wanted = rounded(wanted - some);
    on = on === null ? one.on : later(on, one.on);
    only ??= facts.get(specifications, specification)?.mix === true ? null : part;
  }
  return { quantity: rounded(picked.lacking - wanted), on };
}
