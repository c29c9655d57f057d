import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { WindowView } from '../../shared-core/views/due-view.ts';
import type { MarkShape } from '../ui/marks/mark-shape.ts';

/** One thing that falls due on one car, as lanes, list and table show it. */
export interface YardMark extends MarkShape {
  readonly kind: 'item' | 'obligation' | 'recall' | 'allowance' | 'follow-up';
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
  /** How it stands, in a word or two. */
  readonly standing: string;
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

/** What a mark says beyond its label, and not again what the label ends with: for the ear; the note beside it shows the same to the eye. */
export function saidBeyondLabel(mark: YardMark): string {
  const said = mark.late !== null || mark.rest.endsWith(mark.standing);
  return [said ? '' : mark.standing, mark.when, mark.why, mark.work.join(', ')].filter((part) => part !== '').map(withStop).join(' ');
}

function withStop(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}
