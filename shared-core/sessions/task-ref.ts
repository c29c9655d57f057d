import { z } from 'zod';
import { obligations } from '../care/obligation.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Reference } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { idSchema } from '../result/id.ts';
import { refuse, ok, type Result } from '../result/result.ts';

/** A task by what it does once: a service item, or an obligation that needs the car (its test). */
export const taskRefSchema = z.strictObject({ kind: z.enum(['item', 'obligation']), id: idSchema });
export type TaskRef = z.infer<typeof taskRefSchema>;

/** One name for a task within a plan. @example taskKey({ kind: 'item', id: 'pip-oil' }) //=> 'item/pip-oil' */
export function taskKey(ref: TaskRef): string {
  return `${ref.kind}/${ref.id}`;
}

/** The task of a key; null where it is none. @example taskOfKey('item/pip-oil') //=> { kind: 'item', id: 'pip-oil' } */
export function taskOfKey(key: string): TaskRef | null {
  const at = key.indexOf('/');
  const read = taskRefSchema.safeParse({ kind: key.slice(0, at), id: key.slice(at + 1) });
  return read.success ? read.data : null;
}

/** What the task is about, as a reference of an entry. */
export function taskReference(ref: TaskRef): Reference {
  return { family: (ref.kind === 'item' ? serviceItems : obligations).name, id: ref.id };
}

/** The car of a task and what the item or the obligation is called (null: by its kind); refused where there is none. */
export function findTask(facts: Facts, ref: TaskRef): Result<{ readonly car: string; readonly name: string | null }> {
  const found = ref.kind === 'item' ? facts.get(serviceItems, ref.id) : facts.get(obligations, ref.id);
  if (found !== null) return ok({ car: found.car, name: found.name });
  return ref.kind === 'item' ? refuse('unknown-item', { item: ref.id }, ['tasks']) : refuse('unknown-obligation', { obligation: ref.id }, ['tasks']);
}
