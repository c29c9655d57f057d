import type { PaperView } from '../../shared-core/views/papers-view.ts';

export type Mark = PaperView['marks'][number];

/** The least that a part can be small, in fractions of the page: it must be seen and taken hold of. */
const LEAST = 0.01;
/** How far a key moves a part. */
const STEP = 0.01;
/** Where a part that is added by the keyboard begins. */
const FIRST: Omit<Mark, 'page'> = { left: 0.3, top: 0.4, width: 0.4, height: 0.08 };

/** A place on a page, in fractions of it. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

function tick(value: number): number {
  return Math.round(value * 10_000) / 10_000;
}

/** A new part in the middle of a page. */
export function firstMark(page: number): Mark {
  return { page, ...FIRST };
}

/** The part between two places, wherever one began; null where it is too small to be meant. */
export function markBetween(page: number, a: Spot, b: Spot): Mark | null {
  const within = (value: number) => Math.min(1, Math.max(0, value));
  const [left, right] = [Math.min(within(a.x), within(b.x)), Math.max(within(a.x), within(b.x))];
  const [top, bottom] = [Math.min(within(a.y), within(b.y)), Math.max(within(a.y), within(b.y))];
  return right - left < LEAST / 2 || bottom - top < LEAST / 2 ? null : { page, left: tick(left), top: tick(top), width: tick(right - left), height: tick(bottom - top) };
}

/** A part moved by so much, as far as the page goes. */
export function movedMark(mark: Mark, by: Spot): Mark {
  const along = (start: number, length: number, step: number) => tick(Math.min(1 - length, Math.max(0, start + step)));
  return { ...mark, left: along(mark.left, mark.width, by.x), top: along(mark.top, mark.height, by.y) };
}

/** A part made larger or smaller at its right and lower edges, as far as the page goes. */
export function sizedMark(mark: Mark, by: Spot): Mark {
  const grown = (start: number, length: number, step: number) => tick(Math.min(1 - start, Math.max(LEAST, length + step)));
  return { ...mark, width: grown(mark.left, mark.width, by.x), height: grown(mark.top, mark.height, by.y) };
}

/** What an arrow key means; null for any other key. */
export function arrowStep(key: string): Spot | null {
  const steps: Readonly<Record<string, Spot | undefined>> = { ArrowLeft: { x: -STEP, y: 0 }, ArrowRight: { x: STEP, y: 0 }, ArrowUp: { x: 0, y: -STEP }, ArrowDown: { x: 0, y: STEP } };
  return steps[key] ?? null;
}
