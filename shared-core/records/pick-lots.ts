import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { parts } from '../parts/part.ts';
import { specifications } from '../parts/specification.ts';
import { goodStock, type StandingLot } from './shelf-left.ts';

/** What to take off the shelf for a need, and what then still lacks. */
export interface PickedLots {
  readonly taken: readonly { readonly lot: string; readonly part: string; readonly quantity: number }[];
  readonly lacking: number;
}

/** Quantities are kept to three decimals. */
const thousandths = (quantity: number) => Math.round(quantity * 1000);

/**
 * What to take off the shelf for a need on a day: what expires first is used first. One part alone meets it, unless its specification may
 * be mixed; among parts that suffice, the one that expires first; where none does, the one of which there is most.
 *
 * @example pickLots(facts, shelf, { specification: 'oil', quantity: 4 }, today) //=> { taken: [{ lot: 'can', part: 'oil-a', quantity: 4 }], lacking: 0 }
 */
export function pickLots(facts: Facts, shelf: readonly StandingLot[], need: { readonly specification: string; readonly quantity: number }, on: LocalDate): PickedLots {
  const meeting = new Set(facts.all(parts).filter((part) => part.meets.includes(need.specification)).map((part) => part.id));
  const stock = goodStock(shelf, on).filter((one) => meeting.has(one.lot.part));
  if (facts.get(specifications, need.specification)?.mix === true) return takeFrom(stock, need.quantity);
  const picks = [...new Set(stock.map((one) => one.lot.part))].map((part) => takeFrom(stock.filter((one) => one.lot.part === part), need.quantity));
  const whole = picks.find((pick) => pick.lacking === 0);
  return whole ?? picks.reduce<PickedLots>((best, pick) => (pick.lacking < best.lacking ? pick : best), { taken: [], lacking: need.quantity });
}

function takeFrom(stock: readonly StandingLot[], quantity: number): PickedLots {
  let wanted = thousandths(quantity);
  const taken = stock.flatMap(({ lot, left }) => {
    const some = Math.min(wanted, thousandths(left));
    wanted -= some;
    return some === 0 ? [] : [{ lot: lot.id, part: lot.part, quantity: some / 1000 }];
  });
  return { taken, lacking: wanted / 1000 };
}
