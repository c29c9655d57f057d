import { hasWords, sayOf } from '../result/words/say.ts';

/** What a field that is kept back is called to a reader. @example withheldWords('doneBy') //=> 'who did the work' */
export function withheldWords(field: string): string {
  const key = `withheld-${field}`;
  return hasWords(key) ? sayOf(key) : field;
}
