import { obligations } from '../care/obligation.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import type { Refusal } from '../result/result.ts';
import type { Session } from '../sessions/session.ts';
import { findTask, taskKey, type TaskRef } from '../sessions/task-ref.ts';
import { workedCars, workedTasks } from '../work/worked-on.ts';
import type { CloseSessionRequest } from './close-request.ts';
import { recordedSince } from './recorded-since.ts';

type Check = (facts: Facts, session: Session, request: CloseSessionRequest) => Refusal | null;

/** What does not belong to the session, is told twice, or is in a record already. Null where nothing is amiss. */
export const amissIn: Check = (facts, session, request) => strangeCar(facts, session, request) ?? strangeMet(facts, session, request) ?? twice(facts, session, request) ?? recordedMeanwhile(facts, session, request);

/** What was worked on and is not told. Null where all of it is. */
export const untoldIn: Check = (facts, session, request) => untoldCar(facts, session, request) ?? untoldTask(facts, session, request);

const strangeCar: Check = (facts, session, { cars: told }) => {
  const ofSession = new Set(session.tasks.map((task) => carOf(facts, task)));
  const at = told.findIndex(({ car }, own) => !ofSession.has(car) || told.findIndex((one) => one.car === car) !== own);
  return at < 0 ? null : { code: 'car-not-in-session', values: {}, path: ['cars', at, 'car'] };
};

/** An obligation that is not of the session, or of another car. */
const strangeMet: Check = (facts, session, { cars: told }) => {
  const tasks = new Set(session.tasks.map(taskKey));
  const at = told.findIndex(({ car, met }) => met.some(({ obligation }) => !tasks.has(taskKey({ kind: 'obligation', id: obligation })) || facts.get(obligations, obligation)?.car !== car));
  return at < 0 ? null : { code: 'task-not-in-session', values: {}, path: ['cars', at, 'met'] };
};

const twice: Check = (_facts, _session, { cars: told }) => {
  for (const [at, { met, measured }] of told.entries()) {
    const renewed = secondOf(met.map((one) => one.obligation));
    if (renewed >= 0) return { code: 'met-twice', values: {}, path: ['cars', at, 'met', renewed] };
    const value = secondOf(measured.map((one) => one.value));
    if (value >= 0) return { code: 'value-twice', values: {}, path: ['cars', at, 'measured', value] };
  }
  return null;
};

/** A car on which something was done, and of which nothing is said: its ticks would stand nowhere. */
const untoldCar: Check = (facts, session, { cars: told }) => {
  const missing = [...workedCars(facts, session)].find((car) => !told.some((one) => one.car === car));
  return missing === undefined ? null : { code: 'car-not-told', values: { car: facts.get(cars, missing)?.name ?? missing }, path: ['cars'] };
};

/** A task of which something was done, and of which nobody says how it went. */
const untoldTask: Check = (facts, session, { cars: told }) => {
  const worked = workedTasks(facts, session.id);
  for (const task of session.tasks.filter((one) => one.kind === 'item' && worked.has(taskKey(one)))) {
    const at = told.findIndex(({ car }) => car === carOf(facts, task));
    if (at < 0 || told[at]?.lines.some((line) => line.item === task.id) === true || recordedSince(facts, task, session) !== null) continue;
    return { code: 'task-not-told', values: { task: nameOf(facts, task) }, path: ['cars', at, 'lines'] };
  }
  return null;
};

/** A task that is in a record since the session was made: a second record of it is a question, not a refusal. */
const recordedMeanwhile: Check = (facts, session, { cars: told, sure }) => {
  if (sure) return null;
  for (const [at, { lines, met }] of told.entries()) {
    const done = [
      ...lines.flatMap(({ item, outcome }, line) => (item === null || outcome === 'not-done' ? [] : [{ task: { kind: 'item', id: item } as const, path: ['lines', line] }])),
      ...met.map(({ obligation }, one) => ({ task: { kind: 'obligation', id: obligation } as const, path: ['met', one] })),
    ];
    for (const { task, path } of done) {
      const on = session.tasks.some((one) => taskKey(one) === taskKey(task)) ? recordedSince(facts, task, session) : null;
      if (on !== null) return { code: 'task-recorded', values: { task: nameOf(facts, task), on }, path: ['cars', at, ...path] };
    }
  }
  return null;
};

function carOf(facts: Facts, task: TaskRef): string | null {
  const found = findTask(facts, task);
  return found.ok ? found.value.car : null;
}

function nameOf(facts: Facts, task: TaskRef): string {
  const found = findTask(facts, task);
  return (found.ok ? found.value.name : null) ?? task.id;
}

function secondOf(ids: readonly string[]): number {
  return ids.findIndex((id, at) => ids.indexOf(id) !== at);
}
