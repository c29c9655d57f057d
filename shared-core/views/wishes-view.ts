import { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import { findHousehold } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { rememberedFacts } from '../journal/remembered-facts.ts';
import { householdAccount } from '../ledger/household-account.ts';
import { ledgerSettings } from '../ledger/ledger-settings.ts';
import { sumOf, type Account } from '../ledger/posting.ts';
import { lotsAside, wishNeeds } from '../ledger/wish-aside.ts';
import { wishCost, type WishCost, type WishUnpriced } from '../ledger/wish-cost.ts';
import { savingsPlan, type SavingsPlan, type WishSaving } from '../ledger/wish-savings.ts';
import { byPreference, fulfilledOn, openWishes, wishState, WISH_STATES } from '../ledger/wish-state.ts';
import { wishes, type Wish } from '../ledger/wish.ts';
import { paidFor } from '../ledger/years.ts';
import { specifications } from '../parts/specification.ts';
import { ok, type Message } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { standingPlaces } from '../sessions/place.ts';
import { money } from '../sessions/plan-why.ts';
import { isPinned } from '../sessions/session.ts';
import { carName } from './money-names.ts';
import { leadTimes } from './notice-days.ts';
import { said } from './plan-said.ts';
import { priceBook } from './price-book.ts';
import { sessionOfWish, wishSessions, type WishSessionSources } from './wish-sessions.ts';
import { wishesViewSchema, type WishView } from './wishes-view-schema.ts';

/** What is wished for, what it costs, when it is paid for, and which sessions make it cheaper; the order says the same of parts. */
export const showWishes = ask({
  request: z.strictObject({}),
  reply: wishesViewSchema,
  answer: (standing, _request, { today }) => {
    const facts = rememberedFacts(standing);
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const { currency } = household.value;
    const account = householdAccount(facts, today);
    const open = openCosts(facts, today);
    const plan = wishSavings(facts, today, account, open);
    const { savedBefore, monthlyMinor, savingSince } = ledgerSettings(facts);
    const sources: WishSessionSources = { facts, today, currency, leads: leadTimes(facts) };
    const rank = (wish: Wish) => Math.max(0, WISH_STATES.indexOf(wishState(facts, wish)) - 1);
    return ok({
      today, currency,
      saving: { savedBefore, monthlyMinor, savingSince, putByMinor: plan.putByMinor, spentMinor: plan.spentMinor, leftMinor: plan.leftMinor },
      wishes: [...facts.all(wishes)].sort((a, b) => rank(a) - rank(b) || byPreference(a, b)).map((wish) => wishView(sources, account, wish, open.get(wish.id) ?? null, plan.wishes.find((one) => one.id === wish.id) ?? null)),
      said: savingWords(plan, monthlyMinor, open, currency).map(said),
    });
  },
});

/** What each wish that is still to come true costs yet, in the order of preference. */
export function openCosts(facts: Facts, today: LocalDate): ReadonlyMap<string, WishCost> {
  const prices = { unitMinor: priceBook(facts, today).unitMinor, ownHourMinor: ledgerSettings(facts).ownHourMinor };
  return new Map(openWishes(facts).map((wish) => [wish.id, wishCost(facts, wish, prices)]));
}

/** How far the savings reach: what wishes have cost and what lies aside is spent of them. */
export function wishSavings(facts: Facts, today: LocalDate, account: Account, open: ReadonlyMap<string, WishCost>): SavingsPlan {
  const list = [...open].map(([id, cost]) => ({ id, costMinor: cost.unpriced.length === 0 ? cost.likelyMinor : null }));
  return savingsPlan(ledgerSettings(facts), paidFor(account).wishesMinor, list, today);
}

function wishView(sources: WishSessionSources, account: Account, wish: Wish, cost: WishCost | null, saving: WishSaving | null): WishView {
  const { facts, today } = sources;
  const session = cost === null ? null : sessionOfWish(facts, wish, today);
  const place = session === null ? undefined : standingPlaces(facts).find((one) => one.place.id === session.place)?.place;
  return {
    wish, carName: carName(facts, wish.car), state: wishState(facts, wish), fulfilledOn: fulfilledOn(facts, wish),
    needs: wishNeeds(facts, wish).map((need) => {
      const specification = facts.get(specifications, need.specification);
      return { ...need, name: specification?.name ?? need.specification, unit: specification?.unit ?? '' };
    }),
    cost: cost === null ? null : { ...cost, unpriced: cost.unpriced.map(unpricedName) },
    spentMinor: wishSpent(facts, account, wish),
    savedMinor: saving?.savedMinor ?? 0, lacksMinor: saving?.lacksMinor ?? null, paidForOn: saving?.paidForOn ?? null,
    planned: session === null ? null : { session: session.id, day: session.day, placeName: place?.name ?? session.place, kept: isPinned(session) },
    sessions: cost === null ? [] : wishSessions(sources, wish, saving).map((one) => ({ ...one })),
    said: cost === null || saving === null ? [] : wishWords(sources, cost, saving).map(said),
  };
}

/** What a wish has cost so far: what records say, and what lies aside for it. */
export function wishSpent(facts: Facts, account: Account, wish: Pick<Wish, 'id'>): number {
  const aside = lotsAside(facts);
  const spent = account.costs.filter(({ side }) => side.kind === 'wish' && side.wish === wish.id);
  return sumOf(spent) + sumOf(account.balances.filter((one) => one.kind === 'for-a-wish' && aside.get(one.source.id) === wish.id));
}

function unpricedName(one: WishUnpriced): string {
  return one.kind === 'part' ? one.name : say({ key: 'wish-the-work', values: {} });
}

function wishWords({ today, currency }: WishSessionSources, cost: WishCost, { savedMinor, paidForOn, lacksMinor }: WishSaving): readonly Message[] {
  if (cost.unpriced.length > 0) return [{ key: 'wish-price-unknown', values: { what: cost.unpriced.map(unpricedName).join(', ') } }];
  if (paidForOn === null) return [{ key: 'wish-never-paid', values: { lacks: money(lacksMinor ?? 0, currency) } }];
  return [paidForOn <= today ? { key: 'wish-paid-for', values: {} } : { key: 'wish-paid-on', values: { saved: money(savedMinor, currency), date: paidForOn } }];
}

/** A year of waiting puts so much more by; nothing is assumed about prices. */
function savingWords({ putByMinor, spentMinor, leftMinor }: SavingsPlan, monthlyMinor: number, open: ReadonlyMap<string, WishCost>, currency: string): readonly Message[] {
  const sum = (minor: number) => money(minor, currency);
  const all = leftMinor < 0 ? { key: 'wishes-overspent', values: { putBy: sum(putByMinor), spent: sum(spentMinor), over: sum(-leftMinor) } } : { key: 'wishes-saved', values: { putBy: sum(putByMinor), spent: sum(spentMinor), left: sum(leftMinor) } };
  const unknown = [...open.values()].filter((cost) => cost.unpriced.length > 0).length;
  return [all, ...(open.size === 0 ? [] : [{ key: 'wishes-waiting', values: { year: sum(12 * monthlyMinor) } }]), ...(unknown === 0 ? [] : [{ key: 'wishes-unpriced', values: { n: unknown } }])];
}
