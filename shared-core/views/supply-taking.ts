import { addDays, later, type LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { lotsKeptBack } from '../ledger/wish-aside.ts';
import { comingSupply, type ComingLine } from '../parts/coming-supply.ts';
import { parts } from '../parts/part.ts';
import { specifications } from '../parts/specification.ts';
import { pickLots, type PickedLots } from '../records/pick-lots.ts';
import { standingLots, type StandingLot } from '../records/shelf-left.ts';

const rounded = (quantity: number) => Math.round(quantity * 1000) / 1000;

/** What is still free to be taken: what one need takes the next cannot. */
export interface Supply {
  shelf: readonly StandingLot[];
  readonly lines: readonly ComingLine[];
  readonly coming: Map<string, number>;
}

/** When a need is used, and by when what is on the way must be here for it. */
export interface NeedDays {
  readonly usedOn: LocalDate;
  readonly hereBy: LocalDate;
}

/** The days of a session at home: parts are to be here the day before. @example sessionDays('2026-12-12') //=> { usedOn: '2026-12-12', hereBy: '2026-12-11' } */
export function sessionDays(day: LocalDate): NeedDays {
  return { usedOn: day, hereBy: addDays(day, -1) };
}

/** What a need takes off the shelf, what of the rest is here in time, and what then lacks. */
export interface Taken {
  readonly lots: PickedLots['taken'];
  readonly coming: number;
  readonly comingOn: LocalDate | null;
  readonly lacking: number;
}

/** All that stands on the shelf and is on the way, free to be taken: not what is put aside for a wish. */
export function standingSupply(facts: Facts, today: LocalDate): Supply {
  const lines = comingSupply(facts, today);
  const keptBack = lotsKeptBack(facts);
  return { shelf: standingLots(facts).filter(({ lot }) => !keptBack.has(lot.id)), lines, coming: new Map(lines.map((one) => [`${one.order} ${one.line.id}`, one.packs * one.line.quantity])) };
}

/** Takes what a need can have: first off the shelf what is still good on its day, the rest from what is here in time. What is taken is no longer free. */
export function takeSupply(facts: Facts, need: { readonly specification: string; readonly quantity: number }, { usedOn, hereBy }: NeedDays, supply: Supply): Taken {
  const picked = pickLots(facts, supply.shelf, need, usedOn);
  const taken = new Map(picked.taken.map((one) => [one.lot, one.quantity]));
  supply.shelf = supply.shelf.map((one) => ({ ...one, left: rounded(one.left - (taken.get(one.lot.id) ?? 0)) }));
  const onWay = takeComing(facts, need.specification, picked, hereBy, supply);
  return { lots: picked.taken, coming: onWay.quantity, comingOn: onWay.on, lacking: rounded(picked.lacking - onWay.quantity) };
}

/** What of the rest is here in time: of the part that is begun, where parts are not mixed. */
function takeComing(facts: Facts, specification: string, picked: PickedLots, hereBy: LocalDate, supply: Supply): { readonly quantity: number; readonly on: LocalDate | null } {
  const begun = facts.get(specifications, specification)?.mix === true ? null : (picked.taken[0]?.part ?? null);
  let [wanted, on, only]: [number, LocalDate | null, string | null] = [picked.lacking, null, begun];
  for (const one of supply.lines.filter((line) => line.on <= hereBy)) {
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
