import type { Refusal } from '../../../shared-core/result/result.ts';
import { hasWords, sayRefusal } from '../../../shared-core/result/words/say.ts';
import { isWordKey, tell, type WordValues } from '../words/tell.ts';

/**
 * The sentence of a refusal as a form shows it at its field: our own words where the core's would read oddly there, else
 * the core's sentence.
 *
 * @example sayFault({ code: 'text-empty', values: { field: 'name' } }) //=> 'This is empty. Write something.'
 */
export function sayFault(refusal: Refusal): string {
  const key = `fault.${refusal.code}`;
  if (isWordKey(key)) return tell(key, wordValues(refusal));
  return hasWords(refusal.code) ? sayRefusal(atThisField(refusal)) : tell('fault.without-words', { code: refusal.code });
}

/** What a field is called in the request means nothing to who looks at the field itself. */
function atThisField(refusal: Refusal): Refusal {
  return 'field' in refusal.values ? { ...refusal, values: { ...refusal.values, field: tell('fault.this-field') } } : refusal;
}

function wordValues(refusal: Refusal): WordValues {
  return Object.fromEntries(Object.entries(refusal.values).map(([name, value]) => [name, value ?? '']));
}
