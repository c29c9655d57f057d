import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { Lane } from '../../shared-core/views/yard-view.ts';
import type { HouseholdWords } from '../ui/household-words.ts';
import { marksOfAllowance } from './allowance-mark.ts';
import { markOfObligation, markOfRecall } from './duty-mark.ts';
import { markOfFollowUp } from './follow-up-mark.ts';
import { markOfWindow } from './window-mark.ts';
import type { YardMark } from './yard-mark.ts';

/** Everything of a car that has a place in its lane or in "not known", soonest first: the order in which the host gave it. */
export function marksOfLane(lane: Lane, today: LocalDate, words: HouseholdWords): readonly YardMark[] {
  const windows = lane.windows.map((window) => markOfWindow(lane, window, today, words));
  const duties = lane.obligations.map((duty) => markOfObligation(lane, duty, today, words));
  const recalls = lane.recalls.map((recall) => markOfRecall(lane, recall, today, words));
  const allowances = lane.allowances.flatMap((allowance) => marksOfAllowance(lane, allowance, today, words));
  const followUps = lane.followUps.map((one) => markOfFollowUp(lane, one, today, words));
  return [...windows, ...duties, ...recalls, ...allowances, ...followUps].sort((a, b) => rank(a) - rank(b) || compare(a, b));
}

const RANK: Readonly<Record<YardMark['state'], number>> = { late: 0, 'probably-due': 1, open: 2, ahead: 3, unknown: 4 };

function rank(mark: YardMark): number {
  return RANK[mark.state];
}

/** Within a state the sooner first; late items keep the order of the host, which knows the longest late one. */
function compare(a: YardMark, b: YardMark): number {
  if (a.state === 'late') return 0;
  const [one, other] = [a.likely ?? a.from ?? '9999', b.likely ?? b.from ?? '9999'];
  return one < other ? -1 : one > other ? 1 : 0;
}
