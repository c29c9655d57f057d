import type { LocalDate } from '../calendar/local-date.ts';
import { serviceItems, type ServiceItem } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import type { HeldQuote } from '../ledger/held-quote.ts';
import { timeValue } from '../ledger/own-time.ts';
import type { DoneWork, WorkCost } from '../ledger/work-costs.ts';
import { workRecords, type WorkRecord } from '../records/work-record.ts';
import { ownMinutes } from './own-minutes.ts';
import { homePrice, lastPaid, priceBook, type KnownPrice, type PriceBook } from './price-book.ts';

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
      const price = expectedPrice(book, item, records);
      const minutes = ownMinutes(item, records)?.minutes ?? (hourMinor === 0 ? 0 : null);
      return { things: [thing.id], cost: price.missing || minutes === null ? null : { partsMinor: price.minor, consumablesMinor: 0, toolsMinor: 0, otherMinor: 0, timeMinor: timeValue(minutes, hourMinor) } };
    }),
  };
}

/** By the book; what is put in without that anybody says what it takes costs what it last did, or nobody knows. */
function expectedPrice(book: PriceBook, item: ServiceItem, records: readonly WorkRecord[]): KnownPrice {
  if (item.needs.length > 0 || item.work === 'check') return homePrice(book, item, records);
  const paid = lastPaid(item.id, records, 'home');
  return { minor: paid ?? 0, missing: paid === null };
}
