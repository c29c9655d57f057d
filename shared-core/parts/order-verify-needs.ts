import { daysBetween } from '../calendar/local-date.ts';
import type { Refusal } from '../result/result.ts';
import type { Allocation, OrderAnswer } from './order-answer.ts';
import { FROM_SHELF, type OrderInstance, type OrderNeed, type OrderPart } from './order-instance.ts';
import { exactly, type Exactly } from './order-verify-quantity.ts';

/** Faults seen from the needs: each is met whole, or left for later where it may be, or unmet for the right reason; by parts that fit and come in time. */
export function needFaults(instance: OrderInstance, answer: OrderAnswer): readonly Refusal[] {
  const exact = exactly(instance, answer);
  if (exact === null) return [{ code: 'answer-quantity-too-fine', values: {}, path: ['allocation'] }];
  return instance.needs.flatMap((need) => {
    const rows = answer.allocation.flatMap((row, at) => (row.need === need.id ? [{ row, at }] : []));
    return [...stateFaults(instance, answer, need, rows.length > 0), ...quantityFaults(need, rows, exact), ...rows.flatMap(({ row, at }) => rowFaults(instance, need, row, at, exact))];
  });
}

interface RowAt {
  readonly row: Allocation;
  readonly at: number;
}

/** Every need is in one state and one only. */
function stateFaults(instance: OrderInstance, answer: OrderAnswer, need: OrderNeed, allocated: boolean): readonly Refusal[] {
  const later = answer.later.filter((id) => id === need.id).length;
  const unmet = answer.unmet.filter((row) => row.need === need.id);
  const values = { need: need.id };
  const faults: Refusal[] = [];
  if (later + unmet.length + (allocated ? 1 : 0) !== 1) faults.push({ code: 'need-not-settled-once', values });
  if (later > 0 && need.laterMinor === null) faults.push({ code: 'later-not-allowed', values, path: ['later', answer.later.indexOf(need.id)] });
  const code = someSourceReaches(instance, need) ? 'not-enough' : 'none-in-time';
  const wrong = answer.unmet.findIndex((row) => row.need === need.id && row.code !== code);
  if (wrong >= 0) faults.push({ code: 'unmet-code-wrong', values, path: ['unmet', wrong, 'code'] });
  return faults;
}

/** Met whole, and by one part only where parts may not be mixed. */
function quantityFaults(need: OrderNeed, rows: readonly RowAt[], exact: Exactly): readonly Refusal[] {
  if (rows.length === 0) return [];
  const got = rows.reduce((sum, { row }) => sum + exact.units(row.quantity), 0n);
  const path = ['allocation', rows[0]?.at ?? 0];
  const faults: Refusal[] = [];
  if (got !== exact.units(need.quantity)) faults.push({ code: 'need-not-whole', values: { need: need.id, quantity: need.quantity }, path });
  if (!need.mix && new Set(rows.map(({ row }) => row.part)).size > 1) faults.push({ code: 'parts-mixed', values: { need: need.id }, path });
  return faults;
}

function rowFaults(instance: OrderInstance, need: OrderNeed, row: Allocation, at: number, exact: Exactly): readonly Refusal[] {
  const values = { need: need.id, part: row.part, from: row.from };
  const faults: Refusal[] = [];
  const note = (code: string, field: string) => faults.push({ code, values, path: ['allocation', at, field] });
  const part = instance.parts.find(({ id }) => id === row.part);
  if (part === undefined || part.contains.length > 0 || !part.meets.includes(need.spec)) note('part-does-not-meet', 'part');
  if (need.step !== null && exact.units(row.quantity) % exact.units(need.step) !== 0n) note('not-a-step', 'quantity');
  if (row.from !== FROM_SHELF && daysLate(instance, row.from, need) > 0) note('too-late', 'from');
  return faults;
}

/** How many days after its date the goods of an offer would come. */
function daysLate(instance: OrderInstance, offerId: string, need: OrderNeed): number {
  const offer = instance.offers.find(({ id }) => id === offerId);
  const supplier = instance.suppliers.find(({ id }) => id === offer?.supplier);
  return supplier === undefined ? Infinity : supplier.leadDays - daysBetween(instance.orderOn, need.neededBy);
}

function someSourceReaches(instance: OrderInstance, need: OrderNeed): boolean {
  const fitting = new Set(instance.parts.filter((part) => part.contains.length === 0 && part.meets.includes(need.spec)).map(({ id }) => id));
  const holding = new Set(instance.parts.filter((part) => holdsAny(part, fitting)).map(({ id }) => id));
  const keeps = ({ quantity, expires }: OrderInstance['shelf'][number]) => quantity > 0 && (expires === null || expires >= (need.usedOn ?? need.neededBy));
  return (
    instance.shelf.some((stock) => holding.has(stock.part) && keeps(stock)) ||
    instance.offers.some((offer) => holding.has(offer.part) && offer.most !== 0 && daysLate(instance, offer.id, need) <= 0)
  );
}

function holdsAny(part: OrderPart, fitting: ReadonlySet<string>): boolean {
  return part.contains.length === 0 ? fitting.has(part.id) : part.contains.some((inner) => fitting.has(inner.part));
}
