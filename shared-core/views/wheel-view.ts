import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { readTyreDateCode, tyreAge } from '../fleet/tyre-date-code.ts';
import { movesOf } from '../fleet/wheel-places.ts';
import { wheelMoves, wheelPlaceSchema, wheels, wheelSchema, type Wheel } from '../fleet/wheel.ts';
import type { Facts } from '../journal/facts.ts';
import { compareNames } from '../result/compare-names.ts';

/** A wheel as the screens show it. */
export const wheelViewSchema = z.object({
  wheel: wheelSchema,
  /** Where it is, and since when; `off` with no date where its only move was undone. */
  place: wheelPlaceSchema,
  since: dateSchema.nullable(),
  moves: z.array(z.object({ date: dateSchema, place: wheelPlaceSchema })),
  /** The weeks in which its tyre may have been made (several where three digits leave the decade open), and its age in whole months. */
  tyre: z.object({ weeks: z.array(z.object({ year: z.int(), week: z.int(), from: dateSchema, to: dateSchema })), leastMonths: z.int(), mostMonths: z.int() }).nullable(),
});
export type WheelView = z.infer<typeof wheelViewSchema>;

/** A car's wheels by name. */
export function wheelViews(facts: Facts, car: string, today: LocalDate): WheelView[] {
  const moves = facts.ofCar(wheelMoves, car);
  return [...facts.ofCar(wheels, car)].sort((a, b) => compareNames(a.name, b.name)).map((wheel): WheelView => {
    const mine = movesOf(moves, wheel.id);
    const last = mine.at(-1);
    return { wheel, place: last?.place ?? 'off', since: last?.date ?? null, moves: mine.map(({ date, place }) => ({ date, place })), tyre: tyreOf(wheel, today) };
  });
}

function tyreOf({ dateCode }: Wheel, today: LocalDate): WheelView['tyre'] {
  const code = dateCode === null ? null : readTyreDateCode(dateCode, today);
  if (code === null || !code.ok) return null;
  const weeks = code.value.state === 'week' ? [code.value.week] : code.value.weeks;
  return { weeks: weeks.map((week) => ({ ...week })), ...tyreAge(code.value, today) };
}
