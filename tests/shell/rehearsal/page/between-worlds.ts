/**
 * The way between the two worlds of a page: its own, and the one of the preload script. They share the document and nothing else, so
 * what is said goes as events under a name that only these two know, copied whole on the way as the true bridge copies it.
 */
export type Said =
  | { readonly kind: 'here' }
  | { readonly kind: 'expose'; readonly name: string; readonly value: Carried }
  | { readonly kind: 'call'; readonly call: number; readonly function: number; readonly given: readonly Carried[] }
  | { readonly kind: 'back'; readonly call: number; readonly value: Carried }
  | { readonly kind: 'fault'; readonly call: number; readonly why: string };

/** A value on its way; a function is carried as its number on the side it stands on. */
export type Carried = { readonly value: unknown } | { readonly function: number } | { readonly fields: Readonly<Record<string, Carried>> };

/** One world's side. */
export interface Side {
  say(said: Said): void;
  carry(value: unknown): Carried;
  take(carried: Carried): unknown;
}

type Called = (...given: unknown[]) => unknown;

/** Opens this world's side; `hear` gets what is neither a call nor an answer to one. */
export function openSide(own: string, other: string, hear: (said: Said) => void): Side {
  const functions: Called[] = [];
  const waiting = new Map<number, { readonly resolve: (value: unknown) => void; readonly reject: (why: Error) => void }>();
  let calls = 0;
  // Taken before any script of the page can put its own in their place.
  const dispatch = document.dispatchEvent.bind(document);
  const clone = structuredClone.bind(globalThis);
  const Event = CustomEvent;

  const say = (said: Said) => void dispatch(new Event(other, { detail: said }));
  const carry = (value: unknown): Carried => {
    if (typeof value === 'function') return { function: functions.push(value as Called) - 1 };
    if (isPlain(value) && holdsFunction(value)) return { fields: Object.fromEntries(Object.entries(value).map(([name, field]) => [name, carry(field)])) };
    return { value: clone(value) };
  };
  const take = (carried: Carried): unknown => {
    if ('function' in carried) return standIn(carried.function);
    if ('fields' in carried) return Object.freeze(Object.fromEntries(Object.entries(carried.fields).map(([name, field]) => [name, take(field)])));
    return carried.value;
  };
  const standIn = (number: number): Called => Object.freeze((...given: unknown[]) => {
    const call = (calls += 1);
    const carried = given.map(carry);
    let now: { readonly value: unknown } | null = null;
    const later = new Promise((resolve, reject) => {
      waiting.set(call, {
        resolve: (value) => {
          now = { value };
          resolve(value);
        },
        reject,
      });
    });
    say({ kind: 'call', call, function: number, given: carried });
    // What was answered at once is given at once, as by the true bridge.
    return now === null ? later : (now as { readonly value: unknown }).value;
  });
  const answer = (call: number, run: () => unknown) => {
    const back = (value: unknown) => say({ kind: 'back', call, value: carry(value) });
    const fault = (error: unknown) => say({ kind: 'fault', call, why: error instanceof Error ? error.message : String(error) });
    try {
      const value = run();
      if (value instanceof Promise) void value.then(back).catch(fault);
      else back(value);
    } catch (error) {
      fault(error);
    }
  };
  document.addEventListener(own, (event) => {
    const said = (event as CustomEvent<Said>).detail;
    if (said.kind === 'call') answer(said.call, () => functions[said.function]?.(...said.given.map(take)));
    else if (said.kind === 'back') waiting.get(said.call)?.resolve(take(said.value));
    else if (said.kind === 'fault') waiting.get(said.call)?.reject(new Error(said.why));
    else hear(said);
    if (said.kind === 'back' || said.kind === 'fault') waiting.delete(said.call);
  });
  return { say, carry, take };
}

function isPlain(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && [Object.prototype, null].includes(Object.getPrototypeOf(value) as object | null);
}

/** A value that holds itself cannot be taken apart; it is copied whole, or not at all. */
function holdsFunction(value: Record<string, unknown>, above: readonly unknown[] = []): boolean {
  if (above.includes(value)) return false;
  return Object.values(value).some((field) => typeof field === 'function' || (isPlain(field) && holdsFunction(field, [...above, value])));
}
