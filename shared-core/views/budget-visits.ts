import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import type { BudgetVisit } from '../ledger/budget-input.ts';
import { largestRemainder } from '../parts/largest-remainder.ts';
import { standingPlaces } from '../sessions/place.ts';
import { pinnedFrom, type Session } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { isUnderway } from '../work/booking-state.ts';
import type { Booking, Quote, WantedLine } from '../work/booking.ts';
import { bookingOf } from '../work/find-booking.ts';
import { quoteSum } from '../work/quote-sum.ts';
import type { KeptFor } from './budget-tasks.ts';
import { openTasks } from './plan-input.ts';

/** The sessions that are kept, by the tasks still to be done in them, and the visits to a garage for which a sum was named. */
export interface KeptVisits {
  readonly kept: ReadonlyMap<string, KeptFor>;
  readonly visits: readonly BudgetVisit[];
}

/** What stands in the calendar already. A booking's own quote counts, else the latest that the garage itself named and that still holds. */
export function keptVisits(facts: Facts, today: LocalDate): KeptVisits {
  const places = new Map(standingPlaces(facts).map(({ place }) => [place.id, place]));
  const kept = new Map<string, KeptFor>();
  const visits: BudgetVisit[] = [];
  for (const session of pinnedFrom(facts, today)) {
    const place = places.get(session.place) ?? null;
    const quoted = quotedVisit(facts, session);
    const covered = new Set(quoted?.covered.flatMap(({ task }) => (task === null ? [] : [taskKey(task)])));
    if (quoted !== null) visits.push({ key: `visit/${session.id}`, name: place?.name ?? session.place, on: session.day, shares: sharesOf(quoted) });
    for (const task of openTasks(facts, session)) {
      const key = taskKey(task);
      if (!kept.has(key)) kept.set(key, { on: session.day, place, inQuote: covered.has(key) });
    }
  }
  return { kept, visits };
}

interface Quoted {
  readonly quote: Quote;
  readonly totalMinor: number;
  /** The lines wanted that the sum is for: those its lines name; where it names none, all. */
  readonly covered: readonly WantedLine[];
}

function quotedVisit(facts: Facts, session: Session): Quoted | null {
  const booking = bookingOf(facts, session);
  if (booking === null || booking.place !== session.place || !isUnderway(booking)) return null;
  const quote = quoteOf(booking, session.day);
  const totalMinor = quote === null ? null : quoteSum(quote).totalMinor;
  if (quote === null || totalMinor === null) return null;
  const named = new Set(quote.lines.flatMap((line) => line.covers));
  return { quote, totalMinor, covered: named.size === 0 ? booking.wanted : booking.wanted.filter((line) => named.has(line.id)) };
}

function quoteOf({ quotes, booked }: Booking, day: LocalDate): Quote | null {
  const agreed = quotes.find((quote) => quote.id === booked?.quote);
  const standing = quotes.filter((quote) => quote.by === null && (quote.validUntil === null || quote.validUntil >= day));
  return agreed ?? standing.reduce<Quote | null>((best, one) => (best === null || one.on >= best.on ? one : best), null);
}

/** The sum by car: by the lines' amounts, each shared by what it covers; with no such amounts by the number of lines wanted. */
function sharesOf({ quote, totalMinor, covered }: Quoted): BudgetVisit['shares'] {
  const carOf = new Map(covered.map((line) => [line.id, line.car]));
  const weights = new Map<string, number>();
  const add = (car: string, weight: number) => weights.set(car, (weights.get(car) ?? 0) + weight);
  for (const { covers, amountMinor } of quote.lines) {
    const cars = covers.flatMap((id) => carOf.get(id) ?? []);
    for (const car of cars) add(car, Math.max(0, Math.round((amountMinor ?? 0) / cars.length)));
  }
  if ([...weights.values()].every((weight) => weight === 0)) for (const { car } of covered) add(car, 1);
  const cars = [...weights.keys()].sort();
  if (cars.length === 0) return [];
  const minor = largestRemainder(totalMinor, cars.map((car) => weights.get(car) ?? 0));
  return cars.map((car, at) => ({ car, minor: minor[at] ?? 0 }));
}
