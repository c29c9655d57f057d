/** Height of every mark, in pixels. */
export const MARK_HEIGHT = 14;
const MIDDLE = MARK_HEIGHT / 2;
/** Half the height of a bar's blunt tip and of a run off the paper. */
const TIP = 1.5;
const FLAG_LENGTH = 19;
const PIN_RADIUS = 4.5;

/** A forecast in pixels. What runs off the paper has its last edge beyond it, and the paper cuts it. */
export interface Band {
  readonly from: number;
  readonly likely: number;
  readonly to: number;
}

/**
 * A tapered bar: thin at the earliest edge, thickest where it is likely, thin again at the latest edge; where the likely
 * date is also the last one it ends blunt there.
 *
 * @example bandPath({ from: 0, likely: 10, to: 30 }) //=> 'M0 8.5 V5.5 L10 0 L30 5.5 V8.5 L10 14 Z'
 */
export function bandPath({ from, likely, to }: Band): string {
  const start = `M${from} ${MIDDLE + TIP} V${MIDDLE - TIP} L${likely} 0`;
  if (likely >= to - 1) return `${start} V${MARK_HEIGHT} Z`;
  return `${start} L${to} ${MIDDLE - TIP} V${MIDDLE + TIP} L${likely} ${MARK_HEIGHT} Z`;
}

/** From one notch to the next, where a bar is long enough for two of them. */
const PITCH = 11;
const NOTCHES_AT_LEAST = 3.4;
/** How wide a notch is, as a part of that, and how much narrower at its ground; how deep at most. */
const NOTCH_PART = 0.46;
const SLANT = 0.75;
const NOTCH_DEPTH = 5;
/** So much of a bar is left above a notch; a shallower one than this is not cut. */
const LEFT_ABOVE = 2.5;
const LEAST_DEPTH = 1.5;

/**
 * A tapered bar whose lower edge is notched, like blocks of tread: its limit is one that is measured, and worn towards. The
 * notches lie evenly on both sides of the likely date; thin ends stay whole.
 */
export function wornPath({ from, likely, to }: Band): string {
  const blunt = likely >= to - 1;
  // Half its height at x.
  const half = (x: number) => TIP + (MIDDLE - TIP) * (x === likely ? 1 : x < likely ? (x - from) / (likely - from) : (to - x) / (to - likely));
  const lower = (x: number): Corner => [x, MIDDLE + half(x)];
  const pitch = Math.min(PITCH, (to - from) / NOTCHES_AT_LEAST);
  const wide = (pitch * NOTCH_PART) / 2;
  const side = (end: number, step: number) => Array.from({ length: Math.max(0, Math.floor((Math.abs(end - likely) - wide) / pitch + 1 / 2)) }, (_, at) => likely + step * pitch * (at + 1 / 2));
  const notch = (x: number): readonly Corner[] => {
    const depth = Math.min(NOTCH_DEPTH, 2 * half(x) - LEFT_ABOVE);
    const ground = MIDDLE + half(x) - depth;
    return depth < LEAST_DEPTH ? [] : [lower(x + wide), [x + wide * SLANT, ground], [x - wide * SLANT, ground], lower(x - wide)];
  };
  const right = blunt ? `L${likely} 0 V${MARK_HEIGHT}` : `L${likely} 0 L${to} ${MIDDLE - TIP} V${MIDDLE + TIP}`;
  const lowerEdge = [...(blunt ? [] : side(to, 1).reverse().flatMap(notch)), lower(likely), ...side(from, -1).flatMap(notch)];
  return `M${from} ${MIDDLE + TIP} V${MIDDLE - TIP} ${right} ${lowerEdge.map(([x, y]) => `L${tenths(x)} ${tenths(y)}`).join(' ')} Z`;
}

type Corner = readonly [x: number, y: number];

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}

/** A wedge: grows from the day one should start to arrange it and ends blunt on the exact date. */
export function wedgePath(from: number, to: number): string {
  return `M${from} ${MIDDLE} L${to} 0 V${MARK_HEIGHT} Z`;
}

/** A pin: its round head over the day, its foot on the line. */
export function pinPath(x: number): string {
  const [radius, head] = [PIN_RADIUS, PIN_RADIUS + 0.5];
  return `M${x} ${head + radius} a${radius} ${radius} 0 1 0 -0.01 0 Z M${x} ${head + radius} V${MARK_HEIGHT + 1}`;
}

/** An eye over a day: its rim, and the middle of its pupil. */
export function eyePath(x: number): { readonly rim: string; readonly pupil: { readonly cx: number; readonly cy: number; readonly r: number } } {
  return { rim: `M${x - 10} ${MIDDLE} Q${x} -3 ${x + 10} ${MIDDLE} Q${x} ${MARK_HEIGHT + 3} ${x - 10} ${MIDDLE} Z`, pupil: { cx: x, cy: MIDDLE, r: 2.5 } };
}

/** A pennant flying from the today line into the past. */
export function flagPath(pole: number): string {
  const tail = pole - FLAG_LENGTH;
  return `M${pole} 1 H${tail} L${tail + 5} ${MIDDLE} L${tail} ${MARK_HEIGHT - 1} H${pole} Z`;
}

/** How far a flag reaches to the left of the today line. */
export const FLAG_REACH = FLAG_LENGTH;
