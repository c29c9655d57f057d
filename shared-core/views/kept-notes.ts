import type { Message } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import type { HouseholdTask } from '../sessions/household-task.ts';
import { overMinutes } from '../sessions/over-minutes.ts';
import type { Place } from '../sessions/place.ts';
import type { PlanProblem } from '../sessions/plan-problem.ts';
import type { Session } from '../sessions/session.ts';
import { taskKey, type TaskRef } from '../sessions/task-ref.ts';
import { whyNotThere } from '../sessions/why-not-there.ts';

/** A kept session stays whatever has become of its day; the keeper is told, and asked of one whose day has passed how it went. */
export function keptNotes(problem: PlanProblem): readonly Message[] {
  const { pinned, passed, places } = problem.input;
  const placeOf = (session: Session) => places.find((one) => one.place.id === session.place)?.place;
  const standing = pinned.flatMap((session) => {
    const place = placeOf(session);
    return place === undefined ? [] : [{ session, place, tasks: session.tasks.flatMap((ref) => problem.tasks.get(taskKey(ref)) ?? []) }];
  });
  return [
    ...passed.map((session) => wasItDone(problem, session, placeOf(session)?.name ?? session.place)),
    ...standing.flatMap(({ session, tasks }) => pastLegalDay(session, tasks)),
    ...standing.flatMap((one) => onShutDay(problem, one)),
    ...standing.flatMap((one) => notAsEntered(problem, one)),
    ...standing.flatMap(({ session: { day }, place, tasks }) => overMinutes({ settings: problem.input.settings, groups: problem.input.accessGroups }, { day, place, tasks }) ?? []),
  ];
}

function wasItDone({ input }: PlanProblem, { day, tasks }: Session, place: string): Message {
  const named = (ref: TaskRef) => input.tasks.find((one) => one.key === taskKey(ref));
  const names = tasks.flatMap((ref) => named(ref) ?? []).map((task) => `${task.carName}: ${task.name}`).join(', ');
  return { key: names === '' ? 'plan-session-passed' : 'plan-session-passed-with', values: { day, place, tasks: names } };
}

function pastLegalDay({ day }: Session, tasks: readonly HouseholdTask[]): readonly Message[] {
  const missed = tasks.filter(({ legal, late }) => legal !== null && !late && day > legal.lastDay);
  return missed.map(({ carName, name, legal }) => ({ key: 'plan-kept-past-legal', values: { car: carName, task: name, date: legal?.lastDay ?? null, day } }));
}

interface Standing {
  readonly session: Session;
  readonly place: Place;
  readonly tasks: readonly HouseholdTask[];
}

function onShutDay({ input }: PlanProblem, { session: { day }, place, tasks }: Standing): readonly Message[] {
  const why = tasks.flatMap((task) => whyNotThere(input, task, place, day) ?? []);
  const [shut, taken] = [why.find((one) => SHUT.has(one.key)), why.find((one) => TAKEN.has(one.key))];
  const values = { place: place.name, day };
  return [
    ...(shut === undefined ? [] : [{ key: 'plan-kept-on-shut-day', values: { ...values, why: say(shut) } }]),
    ...(taken === undefined ? [] : [{ key: 'plan-kept-car-taken', values: { ...values, why: say(taken) } }]),
  ];
}

/** What cannot be done where it is kept, or not then for want of parts. */
function notAsEntered({ input }: PlanProblem, { session: { day }, place, tasks }: Standing): readonly Message[] {
  return tasks.flatMap((task) => {
    const values = { car: task.carName, task: task.name, place: place.name, day };
    if (task.prices.size > 0 && !task.prices.has(place.id) && !task.unpriced.includes(place.id)) return [{ key: 'plan-kept-elsewhere', values }];
    const why = whyNotThere(input, task, place, day);
    return why?.key === 'parts-not-here-yet' ? [{ key: 'plan-kept-without-parts', values: { ...values, why: say(why) } }] : [];
  });
}

const SHUT: ReadonlySet<string> = new Set(['place-closed-then', 'place-closed-weekday']);
const TAKEN: ReadonlySet<string> = new Set(['car-needed-then', 'car-away-then', 'all-cars-apart']);
