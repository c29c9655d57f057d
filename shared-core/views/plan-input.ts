import type { LocalDate } from '../calendar/local-date.ts';
import { carsHere } from '../fleet/departure.ts';
import { HOUSEHOLD_ID, households } from '../fleet/household.ts';
import type { Facts } from '../journal/facts.ts';
import { recordedSince } from '../records/recorded-since.ts';
import { serviceItems } from '../care/service-item.ts';
import { accessGroups } from '../sessions/access-group.ts';
import { carDays } from '../sessions/car-days.ts';
import { everydayCars } from '../sessions/everyday-cars.ts';
import { placeDays } from '../sessions/place-days.ts';
import { standingPlaces } from '../sessions/place.ts';
import type { PlanInput } from '../sessions/plan-problem.ts';
import { planSettings } from '../sessions/plan-settings.ts';
import { pinnedBefore, pinnedFrom, type Session } from '../sessions/session.ts';
import { taskKey, type TaskRef } from '../sessions/task-ref.ts';
import { worthWhiles } from '../sessions/worth-while.ts';
import { careOf } from './car-care.ts';
import { leadTimes } from './notice-days.ts';
import { partsAtHome } from './parts-at-home.ts';
import { tasksOfCar } from './plan-tasks.ts';
import { priceBook } from './price-book.ts';

/** All that a plan of the household is made of, as it stands today; `free` tasks are taken out of the sessions in which they are pinned. */
export function planInput(facts: Facts, today: LocalDate, horizonDays: number | null, free: readonly TaskRef[] = []): PlanInput {
  const { settings } = planSettings(facts);
  const places = standingPlaces(facts);
  const loose = new Set(free.map(taskKey));
  const pinned = withoutTasks(facts, pinnedFrom(facts, today), loose);
  const kept = new Set(pinned.flatMap((session) => session.tasks.map(taskKey)));
  const leads = leadTimes(facts);
  const care = carsHere(facts).map((car) => careOf(facts, car, today, leads));
  const homes = new Set(places.flatMap(({ place }) => (place.kind === 'home' ? [place.id] : [])));
  const sources = {
    facts, today, settings,
    currency: facts.get(households, HOUSEHOLD_ID)?.currency ?? '',
    partsFrom: partsAtHome({ facts, today, leads }, care.flatMap((one) => one.items), pinned, homes),
    places: places.map((one) => one.place),
    book: priceBook(facts, today),
    pinned: new Set([...loose, ...kept]),
  };
  return {
    today,
    horizonDays: horizonDays ?? settings.horizonDays,
    settings,
    places,
    placeDays: facts.all(placeDays),
    carDays: facts.all(carDays),
    accessGroups: facts.all(accessGroups),
    pairs: facts.all(worthWhiles),
    everyday: everydayCars(facts),
    pinned,
    passed: withoutTasks(facts, pinnedBefore(facts, today), kept),
    tasks: care.flatMap((one) => tasksOfCar(sources, one)),
    unknownItems: care.flatMap((one) => one.items.filter(({ window }) => window.state === 'unknown').map(() => one.car.name)),
    asked: [],
  };
}

/** Sessions with those of their tasks that are still to be done, some of them left out; what then holds nothing is gone. */
function withoutTasks(facts: Facts, sessions: readonly Session[], out: ReadonlySet<string>): readonly Session[] {
  return sessions.map((session) => ({ ...session, tasks: openTasks(facts, session).filter((task) => !out.has(taskKey(task))) })).filter((session) => session.tasks.length > 0);
}

/** Those of a session's tasks that have not been done since it was made, and still are tasks at all. */
export function openTasks(facts: Facts, session: Session): Session['tasks'] {
  return session.tasks.filter((task) => !doneSince(facts, task, session));
}

/** Whether a task was done since a session has meant to do it, by the work records or by a renewal; or is no task any more. */
export function doneSince(facts: Facts, task: TaskRef, session: Session): boolean {
  return (task.kind === 'item' && facts.get(serviceItems, task.id) === null) || recordedSince(facts, task, session) !== null;
}
