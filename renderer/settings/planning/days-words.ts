import type { HouseholdWords } from '../../ui/household-words.ts';
import { tell } from '../../ui/words/tell.ts';

/** A stretch of days. @example daysWords({ from: '2026-12-24', to: '2026-12-26' }, words) //=> '24 Dec 2026 to 26 Dec 2026' */
export function daysWords({ from, to }: { readonly from: string; readonly to: string }, words: HouseholdWords): string {
  return from === to ? tell('days.one', { from: words.date(from) }) : tell('days.from-to', { from: words.date(from), to: words.date(to) });
}
