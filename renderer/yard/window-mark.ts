import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { WindowView } from '../../shared-core/views/due-view.ts';
import type { Lane } from '../../shared-core/views/yard-view.ts';
import { dueToday, dueWords, isExact, lateWords, minutesWords, stateWords } from '../ui/due-words.ts';
import type { HouseholdWords } from '../ui/household-words.ts';
import { shapeOfWindow } from '../ui/marks/mark-shape.ts';
import { tell } from '../ui/words/tell.ts';
import type { YardMark } from './yard-mark.ts';

/** The mark of a service item's due window. */
export function markOfWindow(lane: Lane, window: WindowView, today: LocalDate, words: HouseholdWords): YardMark {
  const work = lane.work[window.item];
  const late = window.lateBy === null ? null : lateWords(window.lateBy, words);
  const exact = isExact(window);
  return {
    ...shapeOfWindow(window),
    kind: 'item',
    id: `${lane.id}/item/${window.item}`,
    car: lane.id,
    carName: lane.name,
    href: `/car/${lane.id}/item/${window.item}`,
    name: window.name,
    rest: restOf(window, late, today, words),
    state: window.state,
    late,
    standing: stateWords(window, words),
    when: dueWords(window, words),
    why: window.reason.text,
    effort: work === undefined ? [] : effortWords(work),
    work: work === undefined ? [] : workWords(work, window, words),
    from: exact ? window.arrangeFrom : window.earliest,
    likely: window.likely,
    to: window.latest,
  };
}

function restOf(window: WindowView, late: string | null, today: LocalDate, words: HouseholdWords): string {
  const { state, likely } = window;
  if (late !== null) return tell('mark.late', { late });
  if (dueToday(window)) return tell('mark.due-today');
  if (state === 'probably-due') return tell('mark.probably-due');
  if (isExact(window) && likely !== null) return tell(state === 'open' ? 'mark.dated-soon' : 'mark.dated', { date: words.nearDate(likely, today) });
  return state === 'open' ? tell('mark.soon') : '';
}

function effortWords({ minutes, place, harm }: Lane['work'][string]): string[] {
  const parts = minutes === null ? [] : [minutesWords(minutes)];
  parts.push(tell(`place.${place}`));
  if (harm === 'safety') parts.push(tell('harm.safety'));
  return parts;
}

function workWords(work: Lane['work'][string], { arrangeFrom, state }: WindowView, words: HouseholdWords): string[] {
  const parts = work.harm === 'safety' ? effortWords(work) : [...effortWords(work), tell(`harm.${work.harm}`)];
  if (arrangeFrom !== null && state === 'ahead') parts.push(tell('due.arrange', { date: words.date(arrangeFrom) }));
  return parts;
}
