import type { LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import type { HeldQuote } from '../ledger/held-quote.ts';
import { timeValue } from '../ledger/own-time.ts';
import type { DoneWork, WorkCost } from '../ledger/work-costs.ts';
import { workRecords } from '../records/work-record.ts';
import { ownMinutes } from './own-minutes.ts';
import { homePrice, priceBook } from './price-book.ts';

/**
 * What doing the things of a quote at home would cost, by the price book and by the minutes that one's own times say. What has no item, or
 * belongs to a garage, would not be done at home.
 */
export function expectedWork(facts: Facts, quote: HeldQuote, hourMinor: number, today: LocalDate): DoneWork {
  const book = priceBook(facts, today);
  const records = facts.ofCar(workRecords, quote.car);
  const atHome = quote.things.flatMap((thing) => {
    const item = thing.item === null ? null : facts.get(serviceItems, thing.item);
    return item === null || item.place === 'garage' ? [] : [{ thing, item }];
  });
  return {
    done: atHome.map(({ thing }) => ({ id: thing.id, text: thing.text })),
    costs: atHome.map(({ thing, item }): WorkCost => {
      const price = homePrice(book, item, records);
      const minutes = ownMinutes(item, records)?.minutes ?? 0;
      return { things: [thing.id], cost: price.missing ? null : { partsMinor: price.minor, consumablesMinor: 0, toolsMinor: 0, otherMinor: 0, timeMinor: timeValue(minutes, hourMinor) } };
    }),
  };
}
