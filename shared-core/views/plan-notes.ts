import type { Message } from '../result/result.ts';
import { longerThanLiked } from '../sessions/longer-days.ts';
import type { PlanProblem } from '../sessions/plan-problem.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { minutesOf, whyNotThere } from '../sessions/why-not-there.ts';
import { whyNowhere } from '../sessions/why-nowhere.ts';
import { say } from '../result/words/say.ts';

/** What a plan rests on that nobody has said, what is late by law, and kept sessions that stand on a day on which they could not be made. */
export function planNotes(problem: PlanProblem): readonly Message[] {
  return [...assumedPlaces(problem), ...missingPrices(problem), ...assumedMinutes(problem), ...longDays(problem), ...unknownItems(problem), ...lateByLaw(problem), ...keptOnShutDays(problem), ...baselineKeeps(problem)];
}

function assumedPlaces({ input }: PlanProblem): readonly Message[] {
  return input.places.filter((one) => one.assumed).map(({ place }) => ({ key: 'plan-places-assumed', values: { kind: place.kind } }));
}

function missingPrices(problem: PlanProblem): readonly Message[] {
  const names = namesOf(problem, (task) => task.priceMissing);
  return names === null ? [] : [{ key: 'plan-price-missing', values: { tasks: names } }];
}

function assumedMinutes(problem: PlanProblem): readonly Message[] {
  const names = namesOf(problem, (task) => task.minutesAssumed);
  return names === null ? [] : [{ key: 'plan-minutes-assumed', values: { tasks: names, minutes: problem.input.settings.unknownMinutes } }];
}

/** A day that may hold a task longer than one likes to work is said to be longer. */
function longDays({ input, instance }: PlanProblem): readonly Message[] {
  return input.places.flatMap(({ place }) => {
    const long = longerThanLiked(input, place, instance.tasks);
    if (long.length === 0) return [];
    const tasks = long.map(({ task }) => `${task.carName}: ${task.name}`).join(', ');
    return [{ key: 'plan-longer-than-liked', values: { tasks, minutes: minutesOf(input, place), most: Math.max(...long.map((one) => one.minutes)) } }];
  });
}

function unknownItems({ input: { unknownItems: of } }: PlanProblem): readonly Message[] {
  return of.length === 0 ? [] : [{ key: 'plan-unknown-items', values: { items: of.length === 1 ? 'one item' : `${of.length} items`, cars: [...new Set(of)].join(', ') } }];
}

function lateByLaw({ input, instance, tasks, lastDay }: PlanProblem): readonly Message[] {
  return [...tasks.values()].filter((task) => task.legal !== null && task.late).map((task) => {
    const values = { car: task.carName, task: task.name, date: task.legal?.lastDay ?? null };
    const isLeft = instance.tasks.some((one) => one.id === task.key && Object.values(one.costMinor).flat().every((cost) => cost === null));
    if (!isLeft) return { key: 'plan-legal-late', values };
    const why = whyNowhere(input, task, lastDay);
    return why === null ? { key: 'plan-legal-late-nowhere', values } : { key: 'plan-legal-late-left', values: { ...values, last: lastDay, why: say(why) } };
  });
}

function baselineKeeps({ input }: PlanProblem): readonly Message[] {
  return input.pinned.length === 0 ? [] : [{ key: 'plan-baseline-keeps', values: {} }];
}

/** A kept session stays whatever has been closed since; the keeper is told. */
function keptOnShutDays({ input, tasks }: PlanProblem): readonly Message[] {
  const alone = { ...input, pinned: [] };
  return input.pinned.flatMap((session) => {
    const place = input.places.find((one) => one.place.id === session.place)?.place;
    const why = session.tasks.flatMap((ref) => tasks.get(taskKey(ref)) ?? []).flatMap((task) => (place === undefined ? [] : (whyNotThere(alone, task, place, session.day) ?? [])));
    const shut = why.find((one) => SHUT.has(one.key));
    return shut === undefined ? [] : [{ key: 'plan-kept-on-shut-day', values: { place: place?.name ?? session.place, day: session.day, why: say(shut) } }];
  });
}

const SHUT: ReadonlySet<string> = new Set(['place-closed-then', 'place-closed-weekday', 'car-needed-then', 'car-away-then']);

/** The names of some tasks, with their cars; null where there is none. */
function namesOf({ tasks }: PlanProblem, which: (task: PlanProblem['tasks'] extends ReadonlyMap<string, infer Task> ? Task : never) => boolean): string | null {
  const names = [...tasks.values()].filter(which).map((task) => `${task.carName}: ${task.name}`);
  return names.length === 0 ? null : names.join(', ');
}
