import type { YardView } from '../../shared-core/views/yard-view.ts';
import { minutesWords } from '../ui/due-words.ts';
import { tell } from '../ui/words/tell.ts';

/**
 * What lies ahead, in one sentence.
 *
 * @example aheadSentence({ days: 90, items: 7, late: 2, obligations: 1, recalls: 0, allowances: 0, minutes: 320, withoutMinutes: 0 })
 * //=> 'Next 90 days: 7 items fall due, 2 of them late already; 1 obligation ends; about 5 h 20 min of work.'
 */
export function aheadSentence({ days, items, late, obligations, recalls, allowances, minutes, withoutMinutes }: YardView['ahead']): string {
  if (items + obligations + recalls + allowances === 0) return tell('ahead.nothing', { days });
  const parts = [items === 0 ? tell('ahead.no-items') : tell('ahead.items', { n: items }) + lateOf(items, late)];
  if (obligations > 0) parts.push(tell('ahead.obligations', { n: obligations }));
  if (recalls > 0) parts.push(tell('ahead.recalls', { n: recalls }));
  if (allowances > 0) parts.push(tell('ahead.allowances', { n: allowances }));
  if (minutes > 0) parts.push(tell(withoutMinutes > 0 ? 'ahead.minutes-known' : 'ahead.minutes', { time: minutesWords(minutes) }));
  return `${tell('ahead.start', { days })}${parts.join('; ')}.`;
}

function lateOf(items: number, late: number): string {
  if (late === 0) return '';
  return tell(late === items ? 'ahead.all-late' : 'ahead.late', { n: late });
}
