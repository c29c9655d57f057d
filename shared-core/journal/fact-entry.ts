import { carSubject, put, type EntryKind, type Reference } from './entry-kind.ts';
import type { EntryValues } from './entry-values.ts';
import type { Family } from './family.ts';

/** How a kind of entry that states one whole fact differs from the next. */
export interface FactEntryOptions<Value> {
  readonly car: (value: Value) => string | null;
  readonly refersTo?: (value: Value) => readonly Reference[];
  readonly version?: number;
  /** Reads the values of an older version as this version's. */
  readonly upgrade?: (values: EntryValues, version: number) => EntryValues;
}

/**
 * The usual kind of entry: its values are one whole fact of a family, put under the fact's id.
 *
 * @example const readingRecorded = factEntry('reading-recorded', readings, { car: (r) => r.car });
 */
export function factEntry<Value extends { readonly id: string }>(
  kind: string,
  family: Family<Value>,
  options: FactEntryOptions<Value>,
): EntryKind<Value> {
  return {
    kind,
    version: options.version ?? 1,
    schema: family.schema,
    subject: (value) => carSubject(options.car(value)),
    apply: (value) => [put(family, value, options.car(value))],
    refersTo: options.refersTo ?? (() => []),
    ...(options.upgrade === undefined ? {} : { upgrade: options.upgrade }),
  };
}
