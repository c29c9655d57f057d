import type { ServiceItem } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import { standingOffers } from '../parts/offer.ts';
import { parts } from '../parts/part.ts';
import { suppliers } from '../parts/supplier.ts';

/** The shortest lead time in days at which something that meets a specification can be had, by specification. */
export type LeadTimes = ReadonlyMap<string, number>;

/** Days ahead at which any work is arranged, at least (ours, no source). */
export const LEAST_NOTICE_DAYS = 14;
/** Days between parts in hand and the work. */
const DAYS_AFTER_DELIVERY = 7;

/** Lead times from the offers that stand. */
export function leadTimes(facts: Facts): LeadTimes {
  const days = new Map(facts.all(suppliers).map((supplier) => [supplier.id, supplier.leadDays]));
  const meets = new Map(facts.all(parts).map((part) => [part.id, part]));
  const shortest = new Map<string, number>();
  for (const offer of standingOffers(facts)) {
    const part = meets.get(offer.part);
    const inside = part?.contains.flatMap((one) => meets.get(one.part)?.meets ?? []) ?? [];
    for (const specification of [...(part?.meets ?? []), ...inside]) {
      shortest.set(specification, Math.min(shortest.get(specification) ?? Infinity, days.get(offer.supplier) ?? Infinity));
    }
  }
  return shortest;
}

/** Days ahead at which to arrange an item: the supplier's lead and a week, at least 14, which is also the notice a garage is given. */
export function noticeFor(item: ServiceItem, leads: LeadTimes): number {
  const lead = item.needs.map((need) => leads.get(need.specification) ?? 0);
  const parts = lead.length === 0 ? 0 : Math.max(...lead) + DAYS_AFTER_DELIVERY;
  return Math.max(LEAST_NOTICE_DAYS, parts);
}
