/** Stops at our own bug: what must hold here does not. Never for a person's input, which is refused as a value. */
export function assert(condition: boolean, what: string): asserts condition {
  if (!condition) throw new Error(`Bug: ${what}`);
}

/** Closes a switch over a union: reached only if a case was forgotten. */
export function assertNever(value: never): never {
  throw new Error(`Bug: a case was forgotten for ${JSON.stringify(value)}`);
}

/** The value, where its absence would be our own bug. @example must([5][0], 'first') //=> 5 */
export function must<Value>(value: Value | null | undefined, what: string): Value {
  if (value === null || value === undefined) throw new Error(`Bug: no ${what}`);
  return value;
}
