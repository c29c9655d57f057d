import type { Refusal } from '../../../shared-core/result/result.ts';
import { hasWords, sayRefusal } from '../../../shared-core/result/words/say.ts';
import { isWordKey, tell, type WordValues } from '../words/tell.ts';

/**
 * The sentence of a refusal as a form shows it at its field: our own words for what the field itself is called on the
 * screen, else the core's sentence.
 *
 * @example sayFault({ code: 'text-empty', values: { field: 'name' } }) //=> 'This is empty. Write something.'
 */
export function sayFault(refusal: Refusal): string {
  const key = `fault.${refusal.code}`;
  if (isWordKey(key)) return tell(key, wordValues(refusal));
  return hasWords(refusal.code) ? sayRefusal(refusal) : tell('fault.without-words', { code: refusal.code });
}

function wordValues(refusal: Refusal): WordValues {
  return Object.fromEntries(Object.entries(refusal.values).map(([name, value]) => [name, value ?? '']));
}
