import type { Message } from '../result/result.ts';
import { longerThanLiked } from '../sessions/longer-days.ts';
import type { PlanProblem } from '../sessions/plan-problem.ts';
import { minutesOf } from '../sessions/why-not-there.ts';
import { whyNowhere } from '../sessions/why-nowhere.ts';
import { say, sayOf } from '../result/words/say.ts';
import { keptNotes } from './kept-notes.ts';

/** What a plan rests on that nobody has said, what is late by law, and what is to be asked of the kept sessions. `saving`: something is said of one. */
export function planNotes(problem: PlanProblem, saving: boolean): readonly Message[] {
  return [...assumedPlaces(problem), ...missingPrices(problem), ...assumedMinutes(problem), ...longDays(problem), ...unknownItems(problem), ...lateByLaw(problem), ...keptNotes(problem), ...(saving ? baselineKeeps(problem) : [])];
}

function assumedPlaces({ input }: PlanProblem): readonly Message[] {
  return input.places.filter((one) => one.assumed).map(({ place }) => ({ key: 'plan-places-assumed', values: { kind: place.kind } }));
}

function missingPrices(problem: PlanProblem): readonly Message[] {
  const names = namesOf(problem, (task) => task.priceMissing);
  return names.length === 0 ? [] : [{ key: names.length === 1 ? 'plan-price-missing' : 'plan-prices-missing', values: { tasks: names.join(', ') } }];
}

function assumedMinutes(problem: PlanProblem): readonly Message[] {
  const names = namesOf(problem, (task) => task.minutesAssumed);
  const values = { tasks: names.join(', '), minutes: problem.input.settings.unknownMinutes };
  return names.length === 0 ? [] : [{ key: names.length === 1 ? 'plan-minutes-assumed-one' : 'plan-minutes-assumed', values }];
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
  return of.length === 0 ? [] : [{ key: 'plan-unknown-items', values: { items: sayOf('counted-items', { n: of.length }), cars: [...new Set(of)].join(', ') } }];
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

/** The names of some tasks, with their cars. */
function namesOf({ tasks }: PlanProblem, which: (task: PlanProblem['tasks'] extends ReadonlyMap<string, infer Task> ? Task : never) => boolean): readonly string[] {
  return [...tasks.values()].filter(which).map((task) => `${task.carName}: ${task.name}`);
}
