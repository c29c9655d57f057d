import { daysBetween, type LocalDate } from '../calendar/local-date.ts';
import type { Refusal } from '../result/result.ts';
import type { Allocation, OrderAnswer } from './order-answer.ts';
import { FROM_SHELF, type OrderInstance } from './order-instance.ts';
import { exactly, type Exactly } from './order-verify-quantity.ts';

/** Faults seen from the goods: no more is taken than the shelf and the packs hold, nothing past its date, and what is left is what is left. */
export function supplyFaults(instance: OrderInstance, answer: OrderAnswer): readonly Refusal[] {
  const exact = exactly(instance, answer);
  if (exact === null) return [];
  return [...offerFaults(instance, answer, exact), ...shelfFaults(instance, answer, exact), ...leftFaults(instance, answer, exact), ...leftoverFaults(instance, answer, exact)];
}

/** Exact units of each single part in so much of a part: itself, or the contents of a kit. */
function contents(instance: OrderInstance, partId: string, quantity: number, exact: Exactly): ReadonlyMap<string, bigint> {
  const part = instance.parts.find(({ id }) => id === partId);
  if (part === undefined || part.contains.length === 0) return new Map([[partId, exact.units(quantity)]]);
  const found = new Map<string, bigint>();
  for (const inner of part.contains) found.set(inner.part, (found.get(inner.part) ?? 0n) + exact.product(quantity, inner.quantity));
  return found;
}

function takenFrom(answer: OrderAnswer, from: string): readonly { readonly row: Allocation; readonly at: number }[] {
  return answer.allocation.flatMap((row, at) => (row.from === from ? [{ row, at }] : []));
}

function offerFaults(instance: OrderInstance, answer: OrderAnswer, exact: Exactly): readonly Refusal[] {
  return instance.offers.flatMap((offer) => {
    const line = answer.lines.findIndex((each) => each.offer === offer.id);
    const packs = answer.lines[line]?.packs ?? 0;
    const faults: Refusal[] = [];
    if (packs > (offer.most ?? packs)) faults.push({ code: 'more-packs-than-there-are', values: { offer: offer.id, most: offer.most }, path: ['lines', line, 'packs'] });
    const gives = contents(instance, offer.part, offer.quantity, exact);
    const taken = new Map<string, bigint>();
    for (const { row, at } of takenFrom(answer, offer.id)) {
      const sum = (taken.get(row.part) ?? 0n) + exact.units(row.quantity);
      taken.set(row.part, sum);
      const values = { offer: offer.id, part: row.part };
      if (!gives.has(row.part)) faults.push({ code: 'offer-lacks-part', values, path: ['allocation', at, 'from'] });
      else if (sum > (gives.get(row.part) ?? 0n) * BigInt(packs)) faults.push({ code: 'more-than-bought', values, path: ['allocation', at, 'quantity'] });
    }
    return faults;
  });
}

function usedOn({ needs, orderOn }: OrderInstance, id: string): LocalDate {
  const need = needs.find((one) => one.id === id);
  return need?.usedOn ?? need?.neededBy ?? orderOn;
}

/** Each taking may use stock that keeps to its date: then, for every date, takings of that date and later must fit into the stock that keeps so long (and that is enough). */
function shelfFaults(instance: OrderInstance, answer: OrderAnswer, exact: Exactly): readonly Refusal[] {
  const rows = takenFrom(answer, FROM_SHELF).map(({ row, at }) => ({ row, at, by: usedOn(instance, row.need) }));
  return rows.flatMap(({ row: { part }, at, by }) => {
    const lots = instance.shelf.flatMap((stock) => ({ units: contents(instance, stock.part, stock.quantity, exact).get(part) ?? 0n, expires: stock.expires }));
    const ofPart = rows.filter(({ row }) => row.part === part);
    const taken = (from: typeof ofPart) => from.reduce((sum, { row }) => sum + exact.units(row.quantity), 0n);
    const held = (from: typeof lots) => from.reduce((sum, { units }) => sum + units, 0n);
    const path = ['allocation', at, 'quantity'];
    if (taken(ofPart) > held(lots)) return [{ code: 'more-than-on-shelf', values: { part }, path }];
    const keeping = lots.filter(({ expires }) => expires === null || daysBetween(by, expires) >= 0);
    return taken(ofPart.filter((each) => each.by >= by)) > held(keeping) ? [{ code: 'expired-by-then', values: { part, by }, path }] : [];
  });
}

function leftFaults(instance: OrderInstance, answer: OrderAnswer, exact: Exactly): readonly Refusal[] {
  const left = new Map<string, bigint>();
  const add = (part: string, units: bigint) => left.set(part, (left.get(part) ?? 0n) + units);
  for (const { part, quantity } of instance.shelf) for (const [single, units] of contents(instance, part, quantity, exact)) add(single, units);
  for (const { offer: id, packs } of answer.lines) {
    const offer = instance.offers.find((each) => each.id === id);
    if (offer === undefined) continue;
    for (const [single, units] of contents(instance, offer.part, offer.quantity, exact)) add(single, units * BigInt(packs));
  }
  for (const { part, quantity } of answer.allocation) add(part, -exact.units(quantity));
  const said = new Map(answer.left.map(({ part, quantity }) => [part, exact.units(quantity)]));
  return instance.parts
    .filter(({ id }) => (left.get(id) ?? 0n) !== (said.get(id) ?? 0n))
    .map(({ id }) => ({ code: 'left-wrong', values: { part: id }, path: ['left', Math.max(0, answer.left.findIndex(({ part }) => part === id))] }));
}

/** Where nothing may be left over, no more of a part is left than stood on the shelf before. */
function leftoverFaults(instance: OrderInstance, answer: OrderAnswer, exact: Exactly): readonly Refusal[] {
  if (instance.noLeftovers !== true) return [];
  const before = new Map<string, bigint>();
  for (const stock of instance.shelf) for (const [single, units] of contents(instance, stock.part, stock.quantity, exact)) before.set(single, (before.get(single) ?? 0n) + units);
  return answer.left.flatMap(({ part, quantity }, at) => (exact.units(quantity) > (before.get(part) ?? 0n) ? [{ code: 'left-over', values: { part }, path: ['left', at] }] : []));
}
