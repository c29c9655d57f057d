import type { z } from 'zod';
import { assert } from '../result/assert.ts';
import type { Family } from './family.ts';
import type { Json } from './canonical-json.ts';
import type { EntryValues } from './entry-values.ts';

/** The subject of entries that belong to no one car. */
export const HOUSEHOLD_SUBJECT = 'household';

/** The subject of a car's entries. @example carSubject('pip') //=> 'car/pip' */
export function carSubject(car: string | null): string {
  return car === null ? HOUSEHOLD_SUBJECT : `car/${car}`;
}

/** One fact as an entry leaves it: the whole new value under its key, or null where the fact is taken away. */
export interface Put {
  readonly family: string;
  readonly stage: string;
  readonly id: string;
  readonly car: string | null;
  readonly value: Json | null;
}

/** A fact that an entry stands upon, so that the fact cannot be withdrawn from under it. */
export interface Reference {
  readonly family: string;
  readonly id: string;
}

/**
 * A kind of entry. `apply` is pure and reads nothing but the entry: what stands under a key is always what the
 * last standing entry that touched the key says, so state is a replay of the journal and undoing is exact.
 */
export interface EntryKind<Values> {
  readonly kind: string;
  readonly version: number;
  readonly schema: z.ZodType<Values>;
  readonly subject: (values: Values) => string;
  readonly apply: (values: Values) => readonly Put[];
  readonly refersTo: (values: Values) => readonly Reference[];
  /** Reads the values of an older version as this version's; absent where there is no older version. */
  readonly upgrade?: (values: EntryValues, version: number) => EntryValues;
}

/** An entry kind whose type of values is not known here. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- a kind is used only with values its own schema has parsed
export type AnyEntryKind = EntryKind<any>;

/** An entry to be written: the store gives it its number, time, salts and place in the chain. */
export interface NewEntry {
  readonly kind: string;
  readonly version: number;
  readonly subject: string;
  readonly values: EntryValues;
}

/** An entry as written. `at` is the UTC instant of writing. */
export interface Entry extends NewEntry {
  readonly seq: number;
  readonly at: string;
}

/** A new entry of a kind; values that its own schema refuses are our bug. */
export function newEntry<Values>(kind: EntryKind<Values>, values: NoInfer<Values>): NewEntry {
  const parsed = kind.schema.safeParse(values);
  assert(parsed.success, `an entry ${kind.kind} that its schema refuses: ${parsed.error?.message ?? ''}`);
  return { kind: kind.kind, version: kind.version, subject: kind.subject(values), values: values as EntryValues };
}

/** The whole new value of one fact. */
export function put<Value extends { readonly id: string }>(family: Family<Value>, value: Value, car: string | null): Put {
  return { family: family.name, stage: family.stage, id: value.id, car, value: value as unknown as Json };
}

/** A reference to a fact; null ids refer to nothing. */
export function refers(family: Family<never> | Family<unknown>, ...ids: readonly (string | null)[]): Reference[] {
  return ids.flatMap((id) => (id === null ? [] : [{ family: family.name, id }]));
}
