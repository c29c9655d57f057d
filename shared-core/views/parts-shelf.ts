import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { parts } from '../parts/part.ts';
import { goodStock, standingLots, type StandingLot } from '../records/shelf-left.ts';
import { unitOfPart } from './order-lines.ts';
import type { LotView } from './parts-view-schema.ts';

/** The shelf: what is to be used first at the head of its part; what has expired, and what is used up, last. */
export function shelfView(facts: Facts, today: LocalDate): LotView[] {
  const shelf = standingLots(facts);
  const good = goodStock(shelf, today);
  const place = new Map<string, number>();
  const useAs = new Map<string, number>();
  for (const { lot } of good) {
    const at = place.get(lot.part) ?? 1;
    useAs.set(lot.id, at);
    place.set(lot.part, at + 1);
  }
  const rest = shelf.filter((one) => !useAs.has(one.lot.id)).sort((a, b) => Number(a.left === 0) - Number(b.left === 0) || (a.lot.id < b.lot.id ? -1 : 1));
  return [...good, ...rest].map((one) => lotView(facts, one, useAs.get(one.lot.id) ?? null));
}

function lotView(facts: Facts, { lot, left, openedOn, goodUntil }: StandingLot, useAs: number | null): LotView {
  const state = left === 0 ? 'used-up' : useAs === null ? 'expired' : openedOn === null ? 'whole' : 'opened';
  return {
    lot, left, openedOn, goodUntil, useAs, state,
    partName: facts.get(parts, lot.part)?.name ?? lot.part,
    unit: unitOfPart(facts, lot.part),
    worthMinor: lot.paidMinor === null ? null : Math.round((lot.paidMinor * left) / lot.quantity),
  };
}
