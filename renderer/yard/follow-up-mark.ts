import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { Lane } from '../../shared-core/views/yard-view.ts';
import { dueWords, lateWords } from '../ui/due-words.ts';
import type { HouseholdWords } from '../ui/household-words.ts';
import { followUpWindow, shapeOfFollowUp } from '../ui/marks/follow-up-shape.ts';
import { tell } from '../ui/words/tell.ts';
import { placeOf } from './duty-mark.ts';
import type { YardMark } from './yard-mark.ts';

type FollowUp = Lane['followUps'][number];

/** The mark of something to be looked at again after a work: an eye over its day, or a bar where its distance is foreseen. */
export function markOfFollowUp(lane: Lane, one: FollowUp, today: LocalDate, words: HouseholdWords): YardMark {
  const window = followUpWindow(one, today);
  const late = one.lateBy === null ? null : lateWords(one.lateBy, words);
  return {
    ...shapeOfFollowUp(one, today),
    ...placeOf(lane, 'follow-up', one.followUp.id),
    name: tell('mark.follow-up', { text: one.followUp.text }),
    rest: restOf(one, window.state, late, today, words),
    state: window.state,
    late,
    standing: late ?? (one.state === 'due' && one.limb === 'time' ? tell('state.due-today') : tell(`state.${window.state}`)),
    when: window.state === 'unknown' ? '' : dueWords(window, words),
    why: one.itemName === null ? one.text : tell('follow-ups.after', { item: one.itemName, text: one.text }),
    effort: [],
    work: [],
    from: one.from,
    likely: one.likely,
    to: one.latest,
  };
}

function restOf({ likely, limb }: FollowUp, state: YardMark['state'], late: string | null, today: LocalDate, words: HouseholdWords): string {
  if (late !== null) return tell('mark.late', { late });
  if (state === 'probably-due') return tell(limb === 'time' ? 'mark.due-today' : 'mark.probably-due');
  if (limb === 'time' && likely !== null) return tell('mark.dated', { date: words.nearDate(likely, today) });
  return state === 'open' ? tell('mark.soon') : '';
}
