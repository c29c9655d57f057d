import { later, type LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { comingSupply } from '../parts/coming-supply.ts';
import { orders } from '../parts/order.ts';
import { parts } from '../parts/part.ts';
import { suppliers } from '../parts/supplier.ts';
import type { Session } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import type { JobPart } from './job-sheet-view-schema.ts';
import { partsOfItem, sessionParts } from './parts-sessions.ts';
import { said } from './plan-said.ts';
import { standingSupply } from './supply-taking.ts';

/**
 * The needs of a session's items at home: what sessions before it leave is taken off the shelf or is on the way, the rest is missing.
 * Of a session whose day has passed, or of an item that an earlier session holds too, what stands now is taken.
 */
export function jobParts(facts: Facts, session: Session, items: readonly string[], today: LocalDate): JobPart[] {
  const planned = sessionParts(facts, today).find((one) => one.session === session.id)?.needs ?? [];
  const supply = standingSupply(facts, today);
  const day = later(today, session.day);
  return items.flatMap((item) => {
    const known = planned.filter((one) => one.item === item);
    return (known.length > 0 ? known : partsOfItem(facts, item, day, supply)).map((need) => partView(facts, need, session.day, today));
  });
}

type Need = ReturnType<typeof partsOfItem>[number];

function partView(facts: Facts, need: Need, day: LocalDate, today: LocalDate): JobPart {
  const coming = ordersFor(facts, need.specification, day, today);
  const state = need.lacking > 0 ? 'missing' : need.coming > 0 ? 'on-the-way' : 'on-shelf';
  const late = state === 'missing' ? coming.find((one) => !one.inTime) : undefined;
  const values = { quantity: need.lacking, unit: need.unit, specification: need.specificationName, on: need.comingOn, late: late?.expectedOn ?? null };
  const key = state === 'missing' ? (late === undefined ? 'job-part-missing' : 'job-part-too-late') : state === 'on-the-way' ? 'job-part-on-the-way' : 'job-part-on-shelf';
  return { ...need, task: taskKey({ kind: 'item', id: need.item }), state, orders: coming, said: said({ key, values }) };
}

/** The orders on the way that hold something which meets a specification, kits included. */
function ordersFor(facts: Facts, specification: string, day: LocalDate, today: LocalDate): JobPart['orders'] {
  const meets = (id: string) => facts.get(parts, id)?.meets.includes(specification) === true;
  return comingSupply(facts, today).flatMap(({ order, supplier, line, expectedOn, on }) => {
    const inside = [line.part, ...(facts.get(parts, line.part)?.contains ?? []).map((one) => one.part)].find(meets);
    if (inside === undefined) return [];
    return [{ order, supplierName: facts.get(suppliers, supplier)?.name ?? supplier, number: facts.get(orders, order)?.number ?? null, expectedOn, partName: facts.get(parts, inside)?.name ?? inside, inTime: on < day }];
  });
}
