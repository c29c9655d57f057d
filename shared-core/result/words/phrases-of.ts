import { american } from './american.ts';
import { isMadeUp, madeUp } from './made-up.ts';
import { eachForm, type Phrase, type Phrases } from './phrase.ts';

/** A list of British phrases, by the locale in which they are wanted: British as they stand, the others made when they are first asked for. */
export type PhraseList = (locale: string) => Phrases;

/**
 * The ways in which a list of phrases is said. All English but that of the United States is said as the British is written.
 *
 * @example phrasesOf({ tyre: 'The tyre' })('en-US') //=> { tyre: 'The tire' }
 */
export function phrasesOf(british: Phrases): PhraseList {
  const made = new Map<string, Phrases>();
  const makeOnce = (name: string, make: (phrase: Phrase, key: string) => Phrase): Phrases => {
    const list = made.get(name) ?? Object.fromEntries(Object.entries(british).map(([key, phrase]) => [key, make(phrase, key)]));
    made.set(name, list);
    return list;
  };
  return (locale) => {
    if (isMadeUp(locale)) return makeOnce('made-up', (phrase) => eachForm(phrase, madeUp));
    return locale === 'en-US' ? makeOnce('american', american) : british;
  };
}
