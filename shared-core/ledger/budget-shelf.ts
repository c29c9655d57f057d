import { dayNumber } from '../calendar/local-date.ts';
import type { BudgetStock, BudgetTask } from './budget-input.ts';
import type { DueTime } from './budget-days.ts';

/** What the shelf takes off the price of each time of a task, in minor units, the first time first. */
export type OffShelf = ReadonlyMap<string, readonly number[]>;

/** Quantities are kept to three decimals. */
const thousandths = (quantity: number) => Math.round(quantity * 1000);

/**
 * What is on the shelf, or paid for and on the way, goes to who needs it first: from what expires first, and never to a day on which it
 * has expired or has not come, nor what is put aside to anything else. It costs nothing again.
 */
export function offShelf(tasks: readonly { readonly task: BudgetTask; readonly times: readonly DueTime[] }[], stock: readonly BudgetStock[]): OffShelf {
  const left = new Map(stock.map((one) => [one.id, thousandths(one.quantity)]));
  const inOrder = [...stock].sort((a, b) => compare(a.goodUntil ?? '9999', b.goodUntil ?? '9999') || compare(a.id, b.id));
  const off = new Map(tasks.map(({ task, times }) => [task.key, times.map(() => 0)]));
  const uses = tasks.flatMap(({ task, times }) => times.map((time, at) => ({ task, day: time.day, at })));
  for (const { task, day, at } of uses.sort((a, b) => a.day - b.day || compare(a.task.key, b.task.key))) {
    const list = off.get(task.key);
    if (task.price === null || list === undefined || (at === 0 && task.firstInQuote)) continue;
    for (const goods of task.price.goods) list[at] = (list[at] ?? 0) + goods.minor * shareTaken(goods, heapsFor(task, inOrder), left, day);
  }
  return off;
}

/** What is put aside for a task, and then what is anybody's. */
function heapsFor({ key }: BudgetTask, stock: readonly BudgetStock[]): readonly BudgetStock[] {
  return [...stock.filter((one) => one.onlyFor === key), ...stock.filter((one) => one.onlyFor === undefined)];
}

function shareTaken({ specification, quantity }: { readonly specification: string; readonly quantity: number }, stock: readonly BudgetStock[], left: Map<string, number>, day: number): number {
  const wanted = thousandths(quantity);
  let open = wanted;
  for (const one of stock) {
    if (open === 0 || !one.meets.includes(specification) || dayNumber(one.from) > day || (one.goodUntil !== null && dayNumber(one.goodUntil) < day)) continue;
    const taken = Math.min(open, left.get(one.id) ?? 0);
    left.set(one.id, (left.get(one.id) ?? 0) - taken);
    open -= taken;
  }
  return wanted === 0 ? 0 : (wanted - open) / wanted;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
