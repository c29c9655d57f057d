import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import { FLAG_REACH } from '../ui/marks/mark-paths.ts';
import { packRows, type ToPack } from './pack-rows.ts';
import type { TimeScale } from './time-scale.ts';
import type { YardMark } from './yard-mark.ts';

/** A mark with its place in a lane, in pixels from the lane's left edge. */
export interface PlacedMark {
  readonly mark: YardMark;
  readonly row: number;
  /** The shape's stretch on the paper, and its edges, which may lie beyond it. */
  readonly left: number;
  readonly right: number;
  readonly fromX: number;
  readonly likelyX: number;
  readonly toX: number;
  readonly side: 'left' | 'right' | 'over';
  readonly labelLeft: number;
  readonly labelWidth: number;
}

export interface LaneLayout {
  /** From left to right, as the arrow keys go. */
  readonly placed: readonly PlacedMark[];
  /** What lies past what is seen of the calendar, or found no room. */
  readonly folded: readonly YardMark[];
  /** Of these, what lies before the paper. */
  readonly before: number;
  /** What has no date: its history is not known. */
  readonly unknown: readonly YardMark[];
  readonly rows: number;
}

/** A shape is never so small that it is not seen. */
const LEAST_WIDTH = 10;
/** So much of a name, in pixels, is left of it where its words are cut. */
const LEAST_NAME = 64;
const PIN_RADIUS = 7;
const EYE_RADIUS = 11;
/** What has no last edge in sight runs this far past the paper. */
const BEYOND = 400;

/** How much of a lane may be shown: so many rows, so many marks. */
export interface LaneRoom {
  readonly rows: number;
  readonly marks: number;
}

/** Lays a car's marks, soonest first, into the room there is; `measure` tells the width of words in pixels. */
export function layLane(marks: readonly YardMark[], scale: TimeScale, room: LaneRoom, measure: (text: string) => number): LaneLayout {
  const known = marks.filter((mark) => mark.state !== 'unknown');
  const shaped = known.flatMap((mark) => shapeOn(mark, scale) ?? []).slice(0, room.marks);
  const shapes = new Map(shaped.map((one) => [one.mark.id, one]));
  const { packed, folded, rows } = packRows(shaped.map((one) => toPack(one, measure)), scale.width, room.rows);
  const placed = packed.flatMap(({ id, ...label }) => {
    const shape = shapes.get(id);
    return shape === undefined ? [] : [{ ...shape, ...label }];
  });
  const out = new Set(folded);
  const unplaced = known.filter((mark) => !shapes.has(mark.id) || out.has(mark.id));
  return {
    placed: placed.sort((a, b) => a.left - b.left || a.row - b.row),
    folded: unplaced,
    before: unplaced.filter((mark) => isBefore(mark, scale)).length,
    // A follow-up that nobody can place is told in the list: it has no history to be asked for.
    unknown: marks.filter((mark) => mark.state === 'unknown' && mark.kind !== 'follow-up'),
    rows,
  };
}

/** Whether a mark lies left of the paper. */
function isBefore(mark: YardMark, scale: TimeScale): boolean {
  if (mark.shape === 'flag') return scale.todayX < 0;
  return mark.to !== null && scale.x(mark.to) < LEAST_WIDTH;
}

type Shaped = Pick<PlacedMark, 'mark' | 'left' | 'right' | 'fromX' | 'likelyX' | 'toX'>;

/** A mark's shape on the paper; null where no part of it is on it. */
function shapeOn(mark: YardMark, scale: TimeScale): Shaped | null {
  if (mark.shape === 'flag' && scale.todayX < 0) return null;
  if (mark.shape === 'flag') return shape(mark, scale, { fromX: scale.todayX - FLAG_REACH, likelyX: scale.todayX, toX: scale.todayX });
  if (mark.from === null) return null;
  const x = (date: LocalDate | null) => (date === null ? scale.width + BEYOND : scale.x(date));
  const likelyX = x(mark.likely);
  if (mark.shape === 'pin') return shape(mark, scale, { fromX: likelyX - PIN_RADIUS, likelyX, toX: likelyX + PIN_RADIUS });
  if (mark.shape === 'eye') return shape(mark, scale, { fromX: likelyX - EYE_RADIUS, likelyX, toX: likelyX + EYE_RADIUS });
  const toX = x(mark.to);
  return shape(mark, scale, { fromX: Math.min(x(mark.from), toX - LEAST_WIDTH), likelyX, toX });
}

function shape(mark: YardMark, scale: TimeScale, edges: Pick<Shaped, 'fromX' | 'likelyX' | 'toX'>): Shaped | null {
  const [left, right] = [Math.max(0, edges.fromX), Math.min(scale.width, edges.toX)];
  // A sliver at the edge of the paper says less than the count of what is later.
  return right - left < Math.min(LEAST_WIDTH, edges.toX - edges.fromX) ? null : { mark, left, right, ...edges };
}

function toPack({ mark, left, right }: Shaped, measure: (text: string) => number): ToPack {
  const [name, rest] = [measure(mark.name), measure(mark.rest)];
  return { id: mark.id, left, right, labelWidth: Math.ceil(name + rest), leastWidth: Math.ceil(rest + Math.min(name, LEAST_NAME)), prefer: mark.shape === 'flag' ? 'left' : 'right' };
}
