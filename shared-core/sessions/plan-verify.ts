import type { Refusal } from '../result/result.ts';
import type { PlanAnswer, PlannedSession } from './plan-answer.ts';
import type { PlanInstance } from './plan-instance.ts';
import { planMoneyFaults } from './plan-verify-money.ts';
import { sessionFaults } from './plan-verify-sessions.ts';

/**
 * What is wrong with a plan, each fault with a code, the values of its sentence and the path into the answer; empty where every rule is kept
 * and every figure is right. It holds no solver and shares no reckoning with one. That no cheaper plan exists it cannot see.
 *
 * @example verifyPlan(instance, answer) //=> []
 */
export function verifyPlan(instance: PlanInstance, answer: PlanAnswer): readonly Refusal[] {
  const names = nameFaults(instance, answer);
  if (names.length > 0) return names;
  return [...settledOnce(instance, answer), ...mustDoFaults(instance, answer), ...sessionFaults(instance, answer), ...togetherFaults(instance, answer), ...planMoneyFaults(instance, answer)];
}

/** Names that stand for nothing, and sessions that stand twice or hold nothing: with these the rest would make no sense. */
function nameFaults({ days, places, tasks }: PlanInstance, { sessions, left }: PlanAnswer): readonly Refusal[] {
  const known = new Set(tasks.map(({ id }) => id));
  const unknownTask = (id: string, path: Refusal['path']) => (known.has(id) ? [] : [{ code: 'plan-unknown-task', values: { id }, ...(path === undefined ? {} : { path }) }]);
  return [
    ...sessions.flatMap((session, at) => [
      ...(days.includes(session.day) ? [] : [{ code: 'plan-unknown-day', values: { date: session.day }, path: ['sessions', at, 'day'] }]),
      ...(places.some(({ id }) => id === session.place) ? [] : [{ code: 'plan-unknown-place', values: { id: session.place }, path: ['sessions', at, 'place'] }]),
      ...session.tasks.flatMap((id, i) => unknownTask(id, ['sessions', at, 'tasks', i])),
      ...(session.tasks.length > 0 ? [] : [{ code: 'plan-session-empty', values: { date: session.day }, path: ['sessions', at, 'tasks'] }]),
      ...(isRepeat(sessions, at) ? [{ code: 'row-twice', values: { list: 'sessions' }, path: ['sessions', at] }] : []),
    ]),
    ...left.flatMap((id, at) => unknownTask(id, ['left', at])),
  ];
}

function isRepeat(sessions: readonly PlannedSession[], at: number): boolean {
  const session = sessions[at];
  return sessions.findIndex(({ day, place }) => day === session?.day && place === session.place) !== at;
}

/** Every task is in one session, or left out, and not both or twice. */
function settledOnce({ tasks }: PlanInstance, { sessions, left }: PlanAnswer): readonly Refusal[] {
  const settled = [...sessions.flatMap((session) => session.tasks), ...left];
  return tasks.filter(({ id }) => settled.filter((other) => other === id).length !== 1).map(({ id }) => ({ code: 'plan-task-not-once', values: { task: id } }));
}

function mustDoFaults({ tasks }: PlanInstance, { left }: PlanAnswer): readonly Refusal[] {
  return tasks.filter(({ id, mustDo }) => mustDo && left.includes(id)).map(({ id }) => ({ code: 'plan-must-do-left', values: { task: id }, path: ['left', left.indexOf(id)] }));
}

/** On a day on which a car of a list is worked on, at any place, one at least of the list is neither worked on nor away. */
function togetherFaults({ days, tasks, cars, neverAll }: PlanInstance, { sessions }: PlanAnswer): readonly Refusal[] {
  return days.flatMap((date) => {
    const done = sessions.filter(({ day }) => day === date).flatMap((session) => session.tasks);
    const apart = tasks.filter(({ id }) => done.includes(id)).map(({ car }) => car);
    const gone = [...apart, ...cars.flatMap(({ id, away }) => (away.includes(date) ? [id] : []))];
    return neverAll.filter((list) => list.some((car) => apart.includes(car)) && list.every((car) => gone.includes(car))).map((list) => ({ code: 'plan-all-at-once', values: { date, cars: list.join(', ') }, path: ['sessions'] }));
  });
}
