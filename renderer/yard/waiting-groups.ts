import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import { addDays } from '../../shared-core/calendar/local-date.ts';
import type { DoubtfulView } from '../../shared-core/views/due-view.ts';
import type { Lane } from '../../shared-core/views/yard-view.ts';
import type { LaneWithMarks } from './lane-with-marks.ts';
import type { YardMark } from './yard-mark.ts';

export type Seen = Lane['observations'][number];

/** What waits, in the order in which it should not wait any longer. */
export interface WaitingGroups {
  readonly unsafe: readonly { readonly lane: Lane; readonly seen: Seen }[];
  readonly late: readonly YardMark[];
  readonly questions: readonly { readonly lane: Lane; readonly doubtful: DoubtfulView }[];
  /** What measurements say that no mark does. */
  readonly measured: readonly { readonly lane: Lane; readonly told: Lane['measured'][number] }[];
  /** Obligations, recalls and distance allowances. */
  readonly obligations: readonly YardMark[];
  /** What is to be looked at after a work, by its id, until it is ticked. */
  readonly followUps: readonly { readonly followUp: Lane['followUps'][number]['followUp']; readonly putOff: string; readonly unit: Lane['unit']; readonly mark: YardMark }[];
  readonly today: readonly YardMark[];
  readonly probably: readonly YardMark[];
  readonly soon: readonly YardMark[];
  readonly seen: readonly { readonly lane: Lane; readonly seen: Seen }[];
  /** The soonest mark of all, for a yard in which nothing waits. */
  readonly next: YardMark | null;
}

/** Obligations, recalls and distance allowances are listed this far ahead, as far as the sentence on top counts them. */
const OBLIGATION_DAYS = 90;

/** Sorts everything that waits in the yard. */
export function waitingGroups(lanes: readonly LaneWithMarks[], today: LocalDate): WaitingGroups {
  const marks = lanes.flatMap((one) => one.marks);
  const duties = marks.filter((mark) => mark.kind !== 'item' && mark.kind !== 'follow-up' && mark.likely !== null && mark.likely <= addDays(today, OBLIGATION_DAYS));
  const items = marks.filter((mark) => mark.kind === 'item');
  const now = items.filter((mark) => mark.state === 'probably-due');
  const seen = lanes.flatMap(({ lane }) => lane.observations.map((one) => ({ lane, seen: one })));
  return {
    unsafe: seen.filter((one) => one.seen.severity === 'unsafe'),
    late: [...items.filter((mark) => mark.state === 'late'), ...duties.filter((mark) => mark.state === 'late')],
    questions: lanes.flatMap(({ lane }) => lane.doubtful.map((doubtful) => ({ lane, doubtful }))),
    measured: lanes.flatMap(({ lane }) => lane.measured.map((told) => ({ lane, told }))),
    followUps: followUpsOf(lanes),
    today: now.filter(isDated),
    obligations: byDate(duties.filter((mark) => mark.state !== 'late')),
    probably: byDate(now.filter((mark) => !isDated(mark))),
    soon: byDate(items.filter((mark) => mark.state === 'open')),
    seen: seen.filter((one) => one.seen.severity !== 'unsafe'),
    next: byDate(marks.filter((mark) => mark.state === 'ahead'))[0] ?? null,
  };
}

/** Late ones first, then by their day; those without one last. */
function followUpsOf(lanes: readonly LaneWithMarks[]): WaitingGroups['followUps'] {
  const key = ({ mark }: WaitingGroups['followUps'][number]) => `${mark.state === 'late' ? 0 : 1} ${mark.likely ?? mark.from ?? '9999'}`;
  return lanes
    .flatMap(({ lane, marks }) => lane.followUps.flatMap(({ followUp, putOff }) => marks.filter((mark) => mark.kind === 'follow-up' && mark.id.endsWith(`/${followUp.id}`)).map((mark) => ({ followUp, putOff, unit: lane.unit, mark }))))
    .sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
}

/** Whether nothing waits at all. */
export function nothingWaits({ next: _next, ...groups }: WaitingGroups): boolean {
  return Object.values(groups).every((group) => group.length === 0);
}

/** Its date is exact: no reading makes it surer. */
function isDated(mark: YardMark): boolean {
  return mark.shape === 'wedge';
}

function byDate(marks: readonly YardMark[]): readonly YardMark[] {
  const key = (mark: YardMark) => mark.likely ?? mark.from ?? '9999';
  return [...marks].sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
}
