import type { HouseholdWords } from '../../ui/household-words.ts';
import { tell } from '../../ui/words/tell.ts';
import type { IntakeItem } from './answers.ts';

/** What is known of an item, in words. @example standWords(item, words) //=> 'said to be done 3 Mar 2026' */
export function standWords({ question, knowledge, doneOn }: IntakeItem, words: HouseholdWords): string {
  if (question === 'open') return tell(knowledge === 'never-done' ? 'stand.past' : 'stand.open');
  return tell(`stand.${knowledge}`, { date: doneOn === null ? '' : words.date(doneOn) });
}
