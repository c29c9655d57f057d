import { americanText } from './american.ts';

/** The fields that hold words for a person; all others hold keys, kinds and figures. */
const PROSE: ReadonlySet<string> = new Set(['name', 'source', 'text', 'items', 'tools', 'consumables', 'checks', 'reset', 'note']);

/**
 * Something of our own that becomes the keeper's once it is taken (an item of a starting set, a step of a starting sheet), with its words as
 * a household's locale has them. Which words goes by the household alone, so that a decision made anew comes to the same.
 *
 * @example proseFor('en-US', { key: 'tyre', name: 'Tyre' }) //=> { key: 'tyre', name: 'Tire' }
 */
export function proseFor<Value>(locale: string, value: Value): Value {
  return locale === 'en-US' ? (inAmerican(value, false) as Value) : value;
}

function inAmerican(value: unknown, isProse: boolean): unknown {
  if (typeof value === 'string') return isProse ? americanText(value) : value;
  if (Array.isArray(value)) return value.map((one) => inAmerican(one, isProse));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, inAmerican(one, PROSE.has(name))]));
}
