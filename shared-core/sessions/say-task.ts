import { obligations } from '../care/obligation.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { say } from '../result/words/say.ts';
import { findTask, type TaskRef } from './task-ref.ts';

/** A task with its car, in words. @example sayTask(facts, { kind: 'item', id: 'pip-oil' }) //=> 'Pip: Engine oil' */
export function sayTask(facts: Facts, task: TaskRef): string {
  const found = findTask(facts, task);
  if (!found.ok) return task.id;
  const kind = task.kind === 'obligation' ? facts.get(obligations, task.id)?.kind : undefined;
  const name = found.value.name ?? (kind === undefined ? task.id : say({ key: `obligation-${kind}`, values: {} }));
  return `${facts.get(cars, found.value.car)?.name ?? found.value.car}: ${name}`;
}
