import { daysBetween, type LocalDate } from '../calendar/local-date.ts';
import { ok, refuse, type Refusal, type Result } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { isLegalNow } from './compose-plan-problem.ts';
import type { HouseholdTask } from './household-task.ts';
import type { PlanInput, PlanProblem } from './plan-problem.ts';
import { taskKey } from './task-ref.ts';
import { whyNotThere } from './why-not-there.ts';
import { daysOf, notPriced, whyNowhere } from './why-nowhere.ts';

/**
 * Refuses a problem, before it is solved, in which a legal date cannot be kept: no day for it at all, or a pinned session after it. The
 * refusal names the date and what would help. What is late by law already is no reason to refuse: it is planned as soon as can be, or left.
 */
export function checkLegalDates(problem: PlanProblem): Result<PlanProblem> {
  for (const task of problem.instance.tasks) {
    const known = problem.tasks.get(task.id);
    if (known?.legal == null || known.late || !isLegalNow(known, problem.lastDay)) continue;
    const pin = problem.input.pinned.find((one) => one.tasks.some((ref) => taskKey(ref) === task.id));
    const refused = pin === undefined ? whyNoLegalDay(problem, known) : pin.day > known.legal.lastDay ? keptLate(known, pin.day) : null;
    if (refused !== null) return { ok: false, refusal: refused };
  }
  return ok(problem);
}

function keptLate(task: HouseholdTask, day: LocalDate): Refusal {
  return refuse('plan-kept-after-legal', { ...nameOf(task), day }).refusal;
}

/** Why a task that must be done by a legal date has no day up to it, and what would help; null where it has one. */
export function whyNoLegalDay(problem: PlanProblem, task: HouseholdTask): Refusal | null {
  const cells = problem.instance.tasks.find((one) => one.id === task.key)?.costMinor ?? {};
  if (Object.values(cells).flat().some((cost) => cost !== null)) return null;
  const noticed = withinNotice(problem.input, task);
  if (noticed !== null) return refuse('plan-legal-needs-notice', { ...nameOf(task), place: noticed.name, notice: noticed.noticeDays }).refusal;
  const why = whyNowhere(problem.input, task, problem.lastDay);
  if (why?.key === 'longer-than-a-day') return refuse('plan-legal-too-long', { ...why.values, ...nameOf(task) }).refusal;
  if (why !== null && OF_THE_CAR.has(why.key)) return refuse('plan-legal-car-taken', { ...nameOf(task), why: say(why) }).refusal;
  const unpriced = notPriced(problem.input, task);
  if (unpriced !== null) return refuse('plan-legal-not-priced', { ...nameOf(task), why: say(unpriced) }).refusal;
  return refuse('plan-legal-no-day', nameOf(task)).refusal;
}

/** It is not the place that stands in the way. */
const OF_THE_CAR: ReadonlySet<string> = new Set(['car-needed-then', 'car-away-then', 'all-cars-apart']);

/** A place that would be open in time if it did not want to be told so long before. */
function withinNotice(input: PlanInput, task: HouseholdTask) {
  const last = task.legal?.lastDay ?? input.today;
  const days = Math.max(0, daysBetween(input.today, last));
  const places = input.places.map(({ place }) => place).filter((place) => task.prices.has(place.id) && place.noticeDays > days);
  const willing = { ...input, places: input.places.map((one) => ({ ...one, place: { ...one.place, noticeDays: 0 } })) };
  return places.find((place) => daysOf(input.today, last).some((day) => whyNotThere(willing, task, { ...place, noticeDays: 0 }, day) === null)) ?? null;
}

function nameOf(task: HouseholdTask) {
  return { task: task.name, car: task.carName, date: task.legal?.lastDay ?? null };
}
