import { dayNumber, type LocalDate } from '../calendar/local-date.ts';
import type { Message } from '../result/result.ts';
import { isAway } from './car-days.ts';
import { whyClosed } from './open-days.ts';
import { minutesTogether } from './minutes-together.ts';
import { holdsDay } from './place-days.ts';
import type { Place } from './place.ts';
import type { HouseholdTask } from './household-task.ts';
import type { PlanInput } from './plan-problem.ts';

/**
 * Why a task cannot be done on a day at a place, or null where it can: the place is closed, the car is needed or away or the last one left to drive, nobody has said
 * what it costs there, its parts cannot be at home yet, its last legal day has gone by, or it is longer than a day there holds.
 */
export function whyNotThere(input: PlanInput, task: HouseholdTask, place: Place, day: LocalDate): Message | null {
  return whyPlaceShut(input, task, place, day) ?? whyCarTaken(input, task, day) ?? whyNotLegal(task, day) ?? whyNotAt(input, task, place) ?? whyNoParts(task, place, day);
}

/** A day that one has pinned at home is a day of work for all; a car that a garage has booked may have more done to it. */
function whyPlaceShut(input: PlanInput, task: HouseholdTask, place: Place, day: LocalDate): Message | null {
  const stretches = input.placeDays.filter((one) => one.place === place.id);
  const shut = whyClosed({ place, stretches, workWeekdays: input.settings.workWeekdays, today: input.today }, day);
  if (shut === null) return null;
  const pinned = input.pinned.find((one) => one.day === day && one.place === place.id);
  if (pinned === undefined) return shut;
  if (shut.key === 'not-a-work-day') return null;
  const ours = pinned.tasks.some((ref) => input.tasks.some((one) => one.car === task.car && one.ref.kind === ref.kind && one.ref.id === ref.id));
  return shut.key === 'place-needs-notice' && ours ? null : shut;
}

/** It is needed or away; or every other everyday car is away, so that it must be left to drive. */
function whyCarTaken({ carDays, everyday }: PlanInput, task: HouseholdTask, day: LocalDate): Message | null {
  const taken = carDays.find((one) => one.car === task.car && holdsDay(one, day));
  const isLast = everyday.includes(task.car) && everyday.every((car) => car === task.car || isAway(carDays, car, day));
  if (taken === undefined) return isLast ? { key: 'all-cars-apart', values: { day } } : null;
  return { key: taken.why === 'away' ? 'car-away-then' : 'car-needed-then', values: { car: task.carName, day } };
}

/** What is late already may be done on any day: the sooner the better. */
function whyNotLegal({ legal, late }: HouseholdTask, day: LocalDate): Message | null {
  if (legal === null) return null;
  if (!late && day > legal.lastDay) return { key: 'after-legal-date', values: { date: legal.lastDay } };
  return legal.notBefore !== null && day < legal.notBefore ? { key: 'before-legal-date', values: { date: legal.notBefore } } : null;
}

function whyNotAt(input: PlanInput, task: HouseholdTask, place: Place): Message | null {
  if (task.unpriced.includes(place.id)) return { key: 'place-not-priced', values: { task: task.name, place: place.name } };
  if (!task.prices.has(place.id)) return { key: 'not-done-there', values: { task: task.name, place: place.name } };
  const minutes = minutesAlone(input, task);
  // A task longer than one likes to work is worth one long day.
  const most = place.minutesADay;
  return minutes > most ? { key: 'longer-than-a-day', values: { task: task.name, minutes, place: place.name, most } } : null;
}

function whyNoParts({ partsFrom, name }: HouseholdTask, place: Place, day: LocalDate): Message | null {
  return partsFrom !== null && place.kind === 'home' && dayNumber(day) < dayNumber(partsFrom) ? { key: 'parts-not-here-yet', values: { task: name, first: partsFrom } } : null;
}

/** The minutes of a task done by itself: its own, and what must be opened up for it. */
export function minutesAlone(input: PlanInput, task: HouseholdTask): number {
  return minutesTogether(input.accessGroups, [task]);
}

/** The minutes that a day at a place usually holds: at home no more than one likes to work. */
export function minutesOf({ settings }: Pick<PlanInput, 'settings'>, place: Place): number {
  const liked = place.kind === 'home' ? (settings.preferredMinutesADay ?? place.minutesADay) : place.minutesADay;
  return Math.min(liked, place.minutesADay);
}
