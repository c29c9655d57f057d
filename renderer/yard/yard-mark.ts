import { daysBetween, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { ObligationView, WindowView } from '../../shared-core/views/due-view.ts';
import type { Lane } from '../../shared-core/views/yard-view.ts';
import { dueWords, isExact, lateWords, minutesWords } from '../ui/due-words.ts';
import type { HouseholdWords } from '../ui/household-words.ts';
import { shapeOfObligation, shapeOfWindow, type MarkShape } from '../ui/marks/mark-shape.ts';
import { tell } from '../ui/words/tell.ts';

/** One thing that falls due on one car, as lanes, list and table show it. */
export interface YardMark extends MarkShape {
  readonly id: string;
  readonly car: string;
  readonly carName: string;
  /** Where it stands in the Car screen. */
  readonly href: string;
  readonly name: string;
  /** What follows the name beside the mark in a lane: its date, that it is soon, by how much it is late. */
  readonly rest: string;
  readonly state: WindowView['state'];
  /** By how much it is late; null where it is not. */
  readonly late: string | null;
  readonly when: string;
  readonly why: string;
  /** Minutes, place and, where it is safety, what waiting harms: for a line of a list. */
  readonly effort: readonly string[];
  /** All that is known of the work: also what waiting harms, and when to arrange it. */
  readonly work: readonly string[];
  /** The edges drawn: null where they are not on any paper. */
  readonly from: LocalDate | null;
  readonly likely: LocalDate | null;
  readonly to: LocalDate | null;
}

/** Everything of a car that has a place in its lane or in "not known", soonest first: the order in which the host gave it. */
export function marksOfLane(lane: Lane, today: LocalDate, words: HouseholdWords): readonly YardMark[] {
  const windows = lane.windows.map((window) => markOfWindow(lane, window, today, words));
  const duties = lane.obligations.map((duty) => markOfObligation(lane, duty, today, words));
  return [...windows, ...duties].sort((a, b) => rank(a) - rank(b) || compare(a, b));
}

function markOfWindow(lane: Lane, window: WindowView, today: LocalDate, words: HouseholdWords): YardMark {
  const work = lane.work[window.item];
  const late = window.lateBy === null ? null : lateWords(window.lateBy, words);
  const exact = isExact(window);
  return {
    ...shapeOfWindow(window),
    id: `${lane.id}/item/${window.item}`,
    car: lane.id,
    carName: lane.name,
    href: `/car/${lane.id}/item/${window.item}`,
    name: window.name,
    rest: restOf(window, late, today, words),
    state: window.state,
    late,
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

function markOfObligation(lane: Lane, duty: ObligationView, today: LocalDate, words: HouseholdWords): YardMark {
  const shape = shapeOfObligation(duty, today);
  const late = duty.late ? tell('obligation.late-days', { n: daysBetween(duty.on, today) }) : null;
  const date = words.nearDate(duty.on, today);
  return {
    ...shape,
    id: `${lane.id}/obligation/${duty.id}`,
    car: lane.id,
    carName: lane.name,
    href: `/car/${lane.id}/obligation/${duty.id}`,
    name: duty.name,
    rest: late === null ? tell(shape.filled ? 'mark.dated-soon' : 'mark.dated', { date }) : tell('mark.late', { late }),
    state: duty.late ? 'late' : shape.filled ? 'open' : 'ahead',
    late,
    when: tell('obligation.by', { date: words.date(duty.on) }),
    why: duty.opens === null ? '' : tell('obligation.opens', { date: words.date(duty.opens) }),
    effort: [],
    work: duty.late || duty.from <= today ? [] : [tell('due.arrange', { date: words.date(duty.from) })],
    from: duty.on,
    likely: duty.on,
    to: duty.on,
  };
}

/** What a mark says beyond its label: for the ear; the note beside it shows the same to the eye. */
export function saidBeyondLabel(mark: YardMark): string {
  const state = mark.state === 'ahead' ? tell('state.ahead') : '';
  return [state, mark.when, mark.why, mark.work.join(', ')].filter((part) => part !== '').map(withStop).join(' ');
}

function withStop(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

const RANK: Readonly<Record<WindowView['state'], number>> = { late: 0, 'probably-due': 1, open: 2, ahead: 3, unknown: 4 };

function rank(mark: YardMark): number {
  return RANK[mark.state];
}

/** Within a state the sooner first; late items keep the order of the host, which knows the longest late one. */
function compare(a: YardMark, b: YardMark): number {
  if (a.state === 'late') return 0;
  const [one, other] = [a.likely ?? a.from ?? '9999', b.likely ?? b.from ?? '9999'];
  return one < other ? -1 : one > other ? 1 : 0;
}
