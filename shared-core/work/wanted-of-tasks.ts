import { obligations } from '../care/obligation.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import { say } from '../result/words/say.ts';
import type { Session } from '../sessions/session.ts';
import type { TaskRef } from '../sessions/task-ref.ts';
import type { WantedLine } from './booking.ts';

/** The tasks of a session as lines to ask for, in plain words. @example wantedOfTasks(facts, session)[0]?.text //=> 'brake fluid' */
export function wantedOfTasks(facts: Facts, session: Pick<Session, 'tasks'>): Omit<WantedLine, 'id'>[] {
  return session.tasks.flatMap((task) => lineOf(facts, task) ?? []);
}

function lineOf(facts: Facts, task: TaskRef): Omit<WantedLine, 'id'> | null {
  if (task.kind === 'item') {
    const item = facts.get(serviceItems, task.id);
    return item === null ? null : { car: item.car, task, text: item.name };
  }
  const duty = facts.get(obligations, task.id);
  return duty === null ? null : { car: duty.car, task, text: duty.name ?? say({ key: `obligation-${duty.kind}`, values: {} }) };
}
