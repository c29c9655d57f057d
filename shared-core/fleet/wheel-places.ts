import type { LocalDate } from '../calendar/local-date.ts';
import type { WheelMove, WheelPlace } from './wheel.ts';

/** A stretch of days that a wheel spent away from the road; `to` is null while it lasts. */
export interface IdleSpan {
  readonly from: LocalDate;
  readonly to: LocalDate | null;
}

/** Whether a wheel in a place rolls when the car does. */
export function rolls(place: WheelPlace): boolean {
  return place !== 'off' && place !== 'spare';
}

/** One wheel's moves in order of date; there is one a day at most. */
export function movesOf(moves: readonly WheelMove[], wheel: string): readonly WheelMove[] {
  return moves.filter((move) => move.wheel === wheel).sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
}

/** The place of a wheel at the end of a day; null before its first move. */
export function placeOn(moves: readonly WheelMove[], wheel: string, date: LocalDate): WheelPlace | null {
  return movesOf(moves, wheel).findLast((move) => move.date <= date)?.place ?? null;
}

/** The wheel in a place at the end of a day; null where there is none, and for `off`, where there may be many. */
export function wheelIn(moves: readonly WheelMove[], place: WheelPlace, date: LocalDate): string | null {
  if (place === 'off') return null;
  return [...new Set(moves.map((move) => move.wheel))].find((wheel) => placeOn(moves, wheel, date) === place) ?? null;
}

/**
 * When a wheel did not roll, in order, from its first move on.
 *
 * @example idleSpans(moves, 'winter-1') //=> [{ from: '2026-03-20', to: '2026-11-02' }]
 */
export function idleSpans(moves: readonly WheelMove[], wheel: string): readonly IdleSpan[] {
  const inOrder = movesOf(moves, wheel);
  return inOrder.flatMap((move, at) => (rolls(move.place) ? [] : [{ from: move.date, to: inOrder[at + 1]?.date ?? null }]));
}

/** The first day on which two wheels would be in one place, with that place; null where there is none. */
export function firstClash(moves: readonly WheelMove[]): { readonly date: LocalDate; readonly place: WheelPlace } | null {
  const names = [...new Set(moves.map((move) => move.wheel))];
  for (const date of [...new Set(moves.map((move) => move.date))].sort()) {
    const taken = new Set<WheelPlace>();
    for (const place of names.flatMap((wheel) => placeOn(moves, wheel, date) ?? [])) {
      if (place !== 'off' && taken.has(place)) return { date, place };
      taken.add(place);
    }
  }
  return null;
}
