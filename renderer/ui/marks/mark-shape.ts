import type { WindowView } from '../../../shared-core/views/due-view.ts';
import { isExact } from '../due-words.ts';

/** How something that falls due is drawn, in lanes, lists and tables alike. */
export interface MarkShape {
  /** `flag`: late. `bar`: forecast. `worn`: forecast of measured wear. `wedge`: exact date. `pin`: obligation. `question`: not known, or in doubt. `eye`: seen, to look at again. */
  readonly shape: 'flag' | 'bar' | 'worn' | 'wedge' | 'pin' | 'question' | 'eye';
  /** Filled: soon. Outlined: later. */
  readonly filled: boolean;
  readonly tone: 'late' | 'soon' | 'later' | 'plain';
}

/** The shape of a due window. */
export function shapeOfWindow(window: WindowView): MarkShape {
  if (window.state === 'unknown') return { shape: 'question', filled: false, tone: 'plain' };
  if (window.state === 'late') return { shape: 'flag', filled: true, tone: 'late' };
  const filled = window.state === 'open' || window.state === 'probably-due';
  return { shape: isExact(window) ? 'wedge' : window.limb === 'wear' ? 'worn' : 'bar', filled, tone: filled ? 'soon' : 'later' };
}

/** The shape of an obligation on a day: late, to be arranged now, or later. */
export function shapeOfObligation(obligation: { readonly late: boolean; readonly from: string }, today: string): MarkShape {
  if (obligation.late) return { shape: 'flag', filled: true, tone: 'late' };
  const soon = obligation.from <= today;
  return { shape: 'pin', filled: soon, tone: soon ? 'soon' : 'later' };
}

/** The shape of a recall: late, not booked or to be arranged now, or later. */
export function shapeOfRecall(recall: { readonly state: string; readonly late: boolean; readonly arrangeFrom: string | null }, today: string): MarkShape {
  if (recall.state === 'done') return { shape: 'pin', filled: false, tone: 'plain' };
  return shapeOfObligation({ late: recall.late, from: recall.arrangeFrom ?? today }, today);
}

/** The shape of a distance allowance: passed; a forecast of when it is; or the pin of its last day. */
export function shapeOfAllowance(allowance: { readonly passes: { readonly likely: string | null } }, state: WindowView['state']): MarkShape {
  if (state === 'late') return { shape: 'flag', filled: true, tone: 'late' };
  const filled = state !== 'ahead';
  return { shape: allowance.passes.likely === null ? 'pin' : 'bar', filled, tone: filled ? 'soon' : 'later' };
}
