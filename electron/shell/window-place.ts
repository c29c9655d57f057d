import type { Rectangle } from 'electron';
import { z } from 'zod';

/** The least size at which every screen of the page still fits, in points. */
export const LEAST_SIZE = { width: 640, height: 480 } as const;

/** What must be seen of the upper edge for a person to take hold of the window there, in points. */
const HOLD = { width: 120, height: 40 } as const;

const FAR = 100_000;
const point = z.int().min(-FAR).max(FAR);
const length = z.int().min(1).max(FAR);

/** Where the window was and how it was shown; the bounds are those it has when it is neither maximised nor full screen. */
export const windowPlaceSchema = z.strictObject({ x: point, y: point, width: length, height: length, maximised: z.boolean(), fullScreen: z.boolean() });
export type WindowPlace = z.infer<typeof windowPlaceSchema>;

/**
 * The place where a window comes back: as it was where a person could take hold of it, else brought into the nearest area that is
 * free of the system's bars. Never smaller than the least size, never larger than its area unless that is smaller still.
 *
 * @example placeInView({ x: 3000, y: 0, width: 800, height: 600, ...shown }, [{ x: 0, y: 0, width: 1920, height: 1040 }]) //=> x: 1120
 */
export function placeInView(place: WindowPlace, areas: readonly Rectangle[]): WindowPlace {
  const wanted = { ...place, width: Math.max(place.width, LEAST_SIZE.width), height: Math.max(place.height, LEAST_SIZE.height) };
  const area = nearest(wanted, areas);
  if (area === null) return wanted;
  const fits = wanted.width <= area.width && wanted.height <= area.height;
  return fits && areas.some((one) => canBeHeld(wanted, one)) ? wanted : broughtInto(wanted, area);
}

function broughtInto(place: WindowPlace, area: Rectangle): WindowPlace {
  const width = Math.max(LEAST_SIZE.width, Math.min(place.width, area.width));
  const height = Math.max(LEAST_SIZE.height, Math.min(place.height, area.height));
  return { ...place, width, height, x: between(area.x, place.x, area.x + area.width - width), y: between(area.y, place.y, area.y + area.height - height) };
}

/** The first bound wins where there is no room between them: the upper left corner stays in view. */
function between(least: number, value: number, most: number): number {
  return Math.max(least, Math.min(value, most));
}

function canBeHeld(place: Rectangle, area: Rectangle): boolean {
  const seen = overlap({ ...place, height: HOLD.height }, area);
  return seen.width >= HOLD.width && seen.height >= HOLD.height;
}

/** The area that shows the most of the window; where none shows any of it, the one whose middle is nearest. */
function nearest(place: Rectangle, areas: readonly Rectangle[]): Rectangle | null {
  const shown = (area: Rectangle) => overlap(place, area).width * overlap(place, area).height;
  const byNearness = [...areas].sort((a, b) => shown(b) - shown(a) || apart(place, a) - apart(place, b));
  return byNearness[0] ?? null;
}

function overlap(a: Rectangle, b: Rectangle): { width: number; height: number } {
  return {
    width: Math.max(0, Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)),
    height: Math.max(0, Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y)),
  };
}

function apart(a: Rectangle, b: Rectangle): number {
  return Math.hypot(a.x + a.width / 2 - b.x - b.width / 2, a.y + a.height / 2 - b.y - b.height / 2);
}
