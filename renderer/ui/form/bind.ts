import type { ChangeEvent } from 'react';
import type { Entry } from './use-entry.ts';

type KeysOf<Draft, Value> = { readonly [Key in keyof Draft]: Draft[Key] extends Value ? Key : never }[keyof Draft] & string;
type AnyInput = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;

/**
 * Ties a field of text, or a choice, to its place in a form. `path` is its name in the request where that is another.
 *
 * @example <TextInput {...bindText(entry, 'name')} label={tell('car.name')} />
 */
export function bindText<Draft extends object>(entry: Entry<Draft>, name: KeysOf<Draft, string>, path: string = name) {
  return {
    ...entry.at(path),
    value: entry.draft[name] as string,
    onChange: (event: ChangeEvent<AnyInput>) => entry.set({ [name]: event.currentTarget.value } as unknown as Partial<Draft>),
  };
}

/** Ties a box to tick to its place in a form. */
export function bindTick<Draft extends object>(entry: Entry<Draft>, name: KeysOf<Draft, boolean>, path: string = name) {
  return {
    ...entry.at(path),
    checked: entry.draft[name] as boolean,
    onChange: (event: ChangeEvent<HTMLInputElement>) => entry.set({ [name]: event.currentTarget.checked } as unknown as Partial<Draft>),
  };
}

/** Ties a field of a date to its place in a form. */
export function bindDate<Draft extends object>(entry: Entry<Draft>, name: KeysOf<Draft, string>, path: string = name) {
  return {
    ...entry.at(path),
    value: entry.draft[name] as string,
    onChange: (value: string) => entry.set({ [name]: value } as unknown as Partial<Draft>),
  };
}
