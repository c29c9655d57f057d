import { addDays, daysBetween, type LocalDate } from '../calendar/local-date.ts';
import type { Message } from '../result/result.ts';
import type { HouseholdTask } from './household-task.ts';
import type { PlanInput } from './plan-problem.ts';
import { whyNotThere } from './why-not-there.ts';

/** What is nearer to an open day comes first: a day that is only too short tells more than one on which the place is shut. */
const NEAREST_FIRST: readonly string[] = [
  'longer-than-a-day', 'parts-not-here-yet', 'before-legal-date', 'car-needed-then', 'car-away-then', 'all-cars-apart', 'place-needs-notice', 'place-closed-then', 'not-a-work-day', 'place-closed-weekday',
];

/**
 * Why a task can be done on no day from today to the last at any of its places: of all that stands in its way, what is nearest to an
 * open day. Null where some day is open, or it has no place at all.
 */
export function whyNowhere(input: PlanInput, task: HouseholdTask, lastDay: LocalDate): Message | null {
  const places = input.places.map(({ place }) => place).filter((place) => task.prices.has(place.id));
  const reasons = places.flatMap((place) => daysOf(input.today, lastDay).map((day) => whyNotThere(input, task, place, day)));
  if (reasons.includes(null)) return null;
  const [nearest] = reasons.flatMap((one) => one ?? []).sort((a, b) => rankOf(a) - rankOf(b));
  return nearest ?? null;
}

/** That nobody has said what a place asks at which it could be done; null where no such place is left. */
export function notPriced({ places }: PlanInput, task: HouseholdTask): Message | null {
  const at = places.find(({ place }) => task.unpriced.includes(place.id))?.place;
  return at === undefined ? null : { key: 'place-not-priced', values: { task: task.name, place: at.name } };
}

function rankOf({ key }: Message): number {
  const at = NEAREST_FIRST.indexOf(key);
  return at === -1 ? NEAREST_FIRST.length : at;
}

/** The days of a stretch, its last included. */
export function daysOf(from: LocalDate, to: LocalDate): readonly LocalDate[] {
  return Array.from({ length: Math.max(0, daysBetween(from, to) + 1) }, (_, at) => addDays(from, at));
}
