import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { shelfTakings } from '../parts/shelf-taking.ts';
import { stocktakes } from '../parts/stocktake.ts';
import { thousandths } from '../records/lot-movements.ts';
import { workRecords, type WorkRecord } from '../records/work-record.ts';

/** Why something of a lot went, on a day, in whole thousandths; `to` is the record or the car that had it. */
export interface Taken {
  readonly on: LocalDate;
  readonly amount: number;
  readonly to: { readonly kind: 'record'; readonly record: WorkRecord } | { readonly kind: 'taking'; readonly why: 'used' | 'lost' | 'waste' | 'returned'; readonly car: string | null };
}

/** A count of a lot: what was left, or, where nobody wrote down what of its day was in it, by how much more had gone than the books had. */
export type Counted = { readonly on: LocalDate; readonly more: number } | { readonly on: LocalDate; readonly left: number; readonly usedThatDay: number; readonly countsThatDay: number };

/** All that went of one lot, and its counts. */
export interface LotStory {
  readonly taken: readonly Taken[];
  readonly counted: readonly Counted[];
}

/** What went of each lot, told by whom it went to. */
export function lotStories(facts: Facts): ReadonlyMap<string, LotStory> {
  const stories = new Map<string, { readonly taken: Taken[]; readonly counted: Counted[] }>();
  const of = (lot: string) => {
    const known = stories.get(lot) ?? { taken: [], counted: [] };
    stories.set(lot, known);
    return known;
  };
  for (const record of facts.all(workRecords)) for (const use of record.lotsUsed) of(use.lot).taken.push({ on: record.date, amount: thousandths(use.quantity), to: { kind: 'record', record } });
  for (const { lot, on, quantity, why, car } of facts.all(shelfTakings)) of(lot).taken.push({ on, amount: thousandths(quantity), to: { kind: 'taking', why, car } });
  for (const { on, lines } of facts.all(stocktakes)) {
    for (const { lot, counted, difference, sameDay } of lines) {
      of(lot).counted.push(sameDay === null ? { on, more: -thousandths(difference) } : { on, left: thousandths(counted), usedThatDay: thousandths(sameDay.used), countsThatDay: sameDay.counts });
    }
  }
  return stories;
}

/** A step of a lot: how much of it has gone by then, and to whom; a count goes to nobody. */
export interface LotStep {
  readonly on: LocalDate;
  readonly gone: number;
  readonly to: Taken['to'] | { readonly kind: 'count' };
}

/**
 * The steps in which a lot went, in order: a count puts what has gone to what was counted, and what is used later goes from there. What
 * was used on the day of a count is in it as far as was written down then.
 */
export function lotSteps(quantity: number, { taken, counted }: LotStory): readonly LotStep[] {
  const waiting = [...taken].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  const steps: LotStep[] = [];
  let gone = 0;
  const take = (one: Taken, amount: number) => steps.push({ on: one.on, gone: (gone += amount), to: one.to });
  const counts = [...counted].sort((a, b) => (a.on === b.on ? countsBefore(a) - countsBefore(b) : a.on < b.on ? -1 : 1));
  let [day, usedThatDay]: [LocalDate | null, number] = [null, 0];
  for (const count of counts) {
    while (waiting[0] !== undefined && waiting[0].on < count.on) take(waiting[0], (waiting.shift() as Taken).amount);
    if (day !== count.on) [day, usedThatDay] = [count.on, 0];
    let within = 'left' in count ? count.usedThatDay - usedThatDay : Infinity;
    while (waiting[0]?.on === count.on && within > 0) {
      const one = waiting.shift() as Taken;
      const amount = Math.min(one.amount, within);
      take(one, amount);
      within -= amount;
      usedThatDay += amount;
      if (amount < one.amount) waiting.unshift({ ...one, amount: one.amount - amount });
    }
    gone = 'left' in count ? quantity - count.left : gone + count.more;
    steps.push({ on: count.on, gone, to: { kind: 'count' } });
  }
  for (const one of waiting) take(one, one.amount);
  return steps;
}

function countsBefore(count: Counted): number {
  return 'left' in count ? count.countsThatDay : -1;
}
