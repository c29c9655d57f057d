import type { Lane } from '../../../shared-core/views/yard-view.ts';
import type { WindowView } from '../../../shared-core/views/due-view.ts';
import { isExact } from '../due-words.ts';
import type { MarkShape } from './mark-shape.ts';

type FollowUp = Lane['followUps'][number];

/** A follow-up as the words and marks of due windows take it: due by now, from its early edge on soon, else later. */
export function followUpWindow(one: FollowUp, today: string): Pick<WindowView, 'state' | 'earliest' | 'likely' | 'latest' | 'limb'> {
  const ahead = one.from !== null && one.from <= today ? 'open' : 'ahead';
  return { ...one, state: one.state === 'due' ? 'probably-due' : one.state === 'ahead' ? ahead : one.state };
}

/** The shape of a follow-up: late; an eye over its day; the bar of a forecast; or not known. */
export function shapeOfFollowUp(one: FollowUp, today: string): MarkShape {
  const { state } = followUpWindow(one, today);
  if (state === 'late') return { shape: 'flag', filled: true, tone: 'late' };
  if (state === 'unknown') return { shape: 'question', filled: false, tone: 'plain' };
  const soon = state !== 'ahead';
  return { shape: isExact(one) || one.likely === null ? 'eye' : 'bar', filled: soon, tone: soon ? 'soon' : 'later' };
}
