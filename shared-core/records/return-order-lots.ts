import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import type { Moment } from '../journal/operation.ts';
import { lots, type Lot } from '../parts/lot.ts';
import { asideLeft } from '../parts/order-owed.ts';
import type { ReturnedLine } from '../parts/order-return.ts';
import type { StandingLine, StandingOrder } from '../parts/order-standing.ts';
import { parts } from '../parts/part.ts';
import type { ShelfTaking } from '../parts/shelf-taking.ts';
import { must } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { leftOfLots } from './shelf-left.ts';
import { checkTaking } from './take-from-shelf.ts';

/** What goes back of a lot, as it was named or found. */
export interface LotBack {
  readonly lot: string;
  readonly quantity: number;
}

/** What goes back of a line: packs that lay aside, and good ones, which leave the shelf. */
export interface GoodsBack {
  readonly standing: StandingLine;
  readonly aside: number;
  readonly good: number;
}

/** Goods that go back with the lots that they leave. */
export interface ReturnedGoods {
  readonly lines: readonly GoodsBack[];
  readonly lots: readonly LotBack[];
}

/** Quantities are kept to three decimals; sums are made in whole thousandths. */
const thousandths = (quantity: number) => Math.round(quantity * 1000);

/**
 * Which packs go back and from which lots: the lots named, then what came wrong or damaged, then the lots that came into the line, the newest
 * and fullest first. What is no longer there was used already and goes back from where it is. A lot that is not of what goes back, that is
 * named twice or beyond what is left of it is refused.
 */
export function goodsOfReturn(facts: Facts, order: StandingOrder, asked: readonly ReturnedLine[], named: readonly LotBack[], on: LocalDate, moment: Moment): Result<ReturnedGoods> {
  const goods = goodsAsked(order, asked);
  const inside = (one: StandingLine) => contentsOf(facts, one);
  const mostOf = new Map<string, number>();
  for (const { standing, packs } of goods) for (const { part, amount } of inside(standing)) mostOf.set(part, (mostOf.get(part) ?? 0) + packs * amount);
  const sound = checkNamed(facts, order, { named, mostOf }, on, moment);
  if (!sound.ok) return sound;
  const pool = namedByPart(facts, named);
  const wanted = new Map<string, number>();
  const lines = goods.map(({ standing, packs }): GoodsBack => {
    const contents = inside(standing);
    const fromNamed = Math.min(packs, Math.max(...contents.map(({ part, amount }) => Math.ceil((pool.get(part) ?? 0) / amount))));
    for (const { part, amount } of contents) pool.set(part, Math.max(0, (pool.get(part) ?? 0) - fromNamed * amount));
    const aside = Math.min(packs - fromNamed, asideLeft(standing));
    for (const { part, amount } of contents) wanted.set(part, (wanted.get(part) ?? 0) + (packs - aside) * amount);
    return { standing, aside, good: packs - aside };
  });
  for (const [part, amount] of namedByPart(facts, named)) wanted.set(part, (wanted.get(part) ?? 0) - amount);
  const left = leftOfLots(facts);
  const found = [...wanted].flatMap(([part, amount]) => takeInTurn(lotsOf(facts, order, part, on, left).filter((lot) => named.every((one) => one.lot !== lot.id)), left, amount));
  return ok({ lines, lots: [...named, ...found] });
}

/** Packs of goods asked for, one row a line. */
function goodsAsked({ lines }: StandingOrder, asked: readonly ReturnedLine[]): readonly { readonly standing: StandingLine; readonly packs: number }[] {
  const goods = asked.filter((one) => one.what === 'goods');
  return lines.map((standing) => ({ standing, packs: goods.filter((one) => one.line === standing.line.id).reduce((sum, one) => sum + one.packs, 0) })).filter(({ packs }) => packs > 0);
}

/** The single parts that a pack of a line brings, in thousandths. */
function contentsOf(facts: Facts, { line }: StandingLine): readonly { readonly part: string; readonly amount: number }[] {
  const contents = facts.get(parts, line.part)?.contains ?? [];
  return (contents.length > 0 ? contents : [{ part: line.part, quantity: 1 }]).map(({ part, quantity }) => ({ part, amount: Math.max(1, thousandths(quantity * line.quantity)) }));
}

function checkNamed(facts: Facts, { order }: StandingOrder, { named, mostOf }: { readonly named: readonly LotBack[]; readonly mostOf: ReadonlyMap<string, number> }, on: LocalDate, moment: Moment): Result<unknown> {
  for (const [at, { lot: id, quantity }] of named.entries()) {
    const lot = facts.get(lots, id);
    if (lot?.order !== order.id) return refuse('lot-of-another-order', { lot: id }, ['lots', at]);
    const name = facts.get(parts, lot.part)?.name ?? lot.part;
    if (!mostOf.has(lot.part)) return refuse('lot-of-another-line', { part: name }, ['lots', at]);
    if (named.some((one, other) => other < at && one.lot === id)) return refuse('lot-named-twice', { part: name }, ['lots', at]);
    const borne = checkTaking(facts, takingOf({ lot: id, quantity }, on, '', 'new'), moment);
    if (!borne.ok) return borne;
  }
  for (const [part, amount] of namedByPart(facts, named)) {
    if (amount > (mostOf.get(part) ?? 0)) return refuse('lots-beyond-return', { part: facts.get(parts, part)?.name ?? part, most: (mostOf.get(part) ?? 0) / 1000 }, ['lots']);
  }
  return ok(null);
}

function namedByPart(facts: Facts, named: readonly LotBack[]): Map<string, number> {
  const sums = new Map<string, number>();
  for (const one of named) {
    const { part } = must(facts.get(lots, one.lot), 'lot of a return');
    sums.set(part, (sums.get(part) ?? 0) + thousandths(one.quantity));
  }
  return sums;
}

/** Lots of an order's part that were here by a day, the newest first, of those the fullest. */
function lotsOf(facts: Facts, { order }: StandingOrder, part: string, on: LocalDate, left: ReadonlyMap<string, number>): readonly Lot[] {
  const newestAndFullest = (a: Lot, b: Lot) => (a.receivedOn === b.receivedOn ? (left.get(b.id) ?? 0) - (left.get(a.id) ?? 0) : a.receivedOn < b.receivedOn ? 1 : -1);
  return facts.all(lots).filter((lot) => lot.order === order.id && lot.part === part && lot.receivedOn <= on).sort(newestAndFullest);
}

function takeInTurn(ours: readonly Lot[], left: ReadonlyMap<string, number>, amount: number): readonly LotBack[] {
  let wanted = amount;
  return ours.flatMap((lot) => {
    const some = Math.max(0, Math.min(wanted, thousandths(left.get(lot.id) ?? 0)));
    wanted -= some;
    return some === 0 ? [] : [{ lot: lot.id, quantity: some / 1000 }];
  });
}

/** What leaves a lot because it was sent back. */
export function takingOf({ lot, quantity }: LotBack, on: LocalDate, note: string, id: string): ShelfTaking {
  return { id, lot, on, quantity, why: 'returned', car: null, note: note.slice(0, 300) };
}
