import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { must } from '../result/assert.ts';
import { kitShares, type SeparatePrice } from './kit-price.ts';
import type { Lot } from './lot.ts';
import { standingOffers } from './offer.ts';
import { paidPrices } from './offer-price.ts';
import { landedPacks } from './order-landed.ts';
import type { Order } from './order.ts';
import type { StandingLine } from './order-standing.ts';
import { parts } from './part.ts';
import { specifications } from './specification.ts';

/** Packs up to which each stands on the shelf by itself, so that each has its own opened date. */
const MOST_PACKS_APART = 24;
/** Quantities are kept to three decimals. */
const THOUSAND = 1000;

/** Good packs of a line that came, and what is known of them. */
export interface CameIn {
  readonly standing: StandingLine;
  readonly packs: number;
  readonly on: LocalDate;
  readonly expires: LocalDate | null;
  readonly where: string | null;
  readonly keepsOpenedDays: number | null;
}

/**
 * The lots that good packs make on the shelf, each with its share of what was really paid: packs of what is poured or cut stand apart, for
 * each is opened by itself; a kit stands as its contents, its cost shared by their cheapest separate prices.
 */
export function receivedLots(facts: Facts, order: Order, came: CameIn, newId: () => string): readonly Lot[] {
  const { line, good } = came.standing;
  const shares = landedPacks(order, line).slice(good, good + came.packs);
  const part = must(facts.get(parts, line.part), 'part of a line');
  const lot = (of: string, quantity: number, paidMinor: number): Lot => ({
    id: newId(), part: of, quantity: Math.round(quantity * THOUSAND) / THOUSAND, receivedOn: came.on, openedOn: null, expires: came.expires, where: came.where, paidMinor, order: order.id,
    keepsOpenedDays: came.keepsOpenedDays ?? facts.get(parts, of)?.keepsOpenedDays ?? null,
  });
  const whole = shares.reduce((sum, share) => sum + share, 0);
  if (part.contains.length > 0) {
    const { shares: inside } = kitShares(whole, kitContentsOf(facts, line.part));
    return part.contains.map((one, at) => lot(one.part, one.quantity * line.quantity * came.packs, inside[at]?.minor ?? 0));
  }
  return standsApart(facts, line.part) && came.packs <= MOST_PACKS_APART ? shares.map((share) => lot(line.part, line.quantity, share)) : [lot(line.part, line.quantity * came.packs, whole)];
}

/** The contents of a kit with the cheapest price at which each is offered by itself. */
export function kitContentsOf(facts: Facts, kit: string): readonly { readonly part: string; readonly quantity: number; readonly separate: SeparatePrice | null }[] {
  return (facts.get(parts, kit)?.contains ?? []).map(({ part, quantity }) => ({ part, quantity, separate: cheapest(facts, part) }));
}

function cheapest(facts: Facts, part: string): SeparatePrice | null {
  const prices = standingOffers(facts).filter((offer) => offer.part === part).map((offer) => ({ priceMinor: paidPrices(offer).priceMinor, quantity: offer.quantity }));
  return prices.reduce<SeparatePrice | null>((best, one) => (best === null || one.priceMinor / one.quantity < best.priceMinor / best.quantity ? one : best), null);
}

/** What is poured or cut by measure. */
function standsApart(facts: Facts, part: string): boolean {
  const unit = (facts.get(parts, part)?.meets ?? []).map((id) => facts.get(specifications, id)?.unit)[0];
  return unit === 'litre' || unit === 'kilogram' || unit === 'metre';
}
