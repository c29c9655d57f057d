/**
 * The outcome of something that may be refused: a plain object, so that it survives structured cloning between processes.
 *
 * @example
 * const r: Result<number> = ok(3); //=> { ok: true, value: 3 }
 */
export type Result<Value, Refused = Refusal> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly refusal: Refused };

/**
 * Why something was not done. `code` chooses the sentence in words/en.ts, `values` fills it, `path` names the
 * field of the request that is at fault (for a form to point at), where there is one.
 */
export interface Refusal {
  readonly code: string;
  readonly values: MessageValues;
  readonly path?: readonly (string | number)[];
}

/** What a message needs to fill its sentence: plain values only, never prepared text. */
export type MessageValues = Readonly<Record<string, string | number | null>>;

/** Something said to a person: a key into the word list and the values it needs. */
export interface Message {
  readonly key: string;
  readonly values: MessageValues;
}

/** Wraps a value that was accepted. @example ok(1) //=> { ok: true, value: 1 } */
export function ok<Value>(value: Value): { readonly ok: true; readonly value: Value } {
  return { ok: true, value };
}

/**
 * Refuses with a code and the values its sentence needs.
 *
 * @example refuse('unknown-car', { car: 'pip' }) //=> { ok: false, refusal: { code: 'unknown-car', values: { car: 'pip' } } }
 */
export function refuse(
  code: string,
  values: MessageValues = {},
  path?: readonly (string | number)[],
): { readonly ok: false; readonly refusal: Refusal } {
  return { ok: false, refusal: path === undefined ? { code, values } : { code, values, path } };
}
