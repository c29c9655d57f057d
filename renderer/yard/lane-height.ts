/** Every row of marks is as high as what one presses must be (WCAG 2.2, 2.5.8). */
export const ROW_HEIGHT = 24;

/** How a lane stands while it is not opened. */
export interface LaneSize {
  readonly height: number;
  readonly rows: number;
  readonly kind: 'tall' | 'middle' | 'low';
}

const TALL: LaneSize = { height: 96, rows: 4, kind: 'tall' };
const MIDDLE: LaneSize = { height: 56, rows: 2, kind: 'middle' };
/** The soonest mark and a count. */
const LOW: LaneSize = { height: 32, rows: 1, kind: 'low' };

/** The size of a lane: tall up to four cars, middling up to eight, low beyond. @example laneSize(5).height //=> 56 */
export function laneSize(cars: number): LaneSize {
  if (cars <= 4) return TALL;
  return cars <= 8 ? MIDDLE : LOW;
}

/** The height of a lane that is opened: whatever its rows need, never less than closed. */
export function openHeight(rows: number, closed: LaneSize): number {
  return Math.max(TALL.height, closed.height, rows * ROW_HEIGHT);
}
