import { expect, test } from 'vitest';
import { addDays, dayNumber, daysBetween, fromDayNumber, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { DayKm } from '../../../shared-core/fleet/usage-evidence.ts';
import { addMetres, fromTyped, inUnit, metresFromKilometres, toKilometres, type DistanceAsTyped, type Kilometres, type Metres } from '../../../shared-core/units/distance.ts';
import { day } from '../calendar/day.ts';

// These lines fail at the type check, not at the run: `tsc -p tests` says "unused '@ts-expect-error'" where units can mix.
const mixed = (metres: Metres, km: Kilometres, typed: DistanceAsTyped, date: LocalDate) => {
  const days = daysBetween(date, date);
  return [
    // @ts-expect-error -- a plain number is no distance: it is checked first
    addMetres(metres, 1000),
    // @ts-expect-error -- kilometres are not metres
    addMetres(metres, km),
    // @ts-expect-error -- days are not metres
    addMetres(metres, days),
    // @ts-expect-error -- what was typed has a unit and is no number
    addMetres(metres, typed),
    // @ts-expect-error -- metres are not kilometres
    metresFromKilometres(metres),
    // @ts-expect-error -- days are not kilometres
    metresFromKilometres(days),
    // @ts-expect-error -- kilometres are converted from metres, not from kilometres
    toKilometres(km),
    // @ts-expect-error -- there are two units of distance
    inUnit(metres, 'mile'),
    // @ts-expect-error -- a distance as typed needs its unit
    fromTyped({ value: 1 }),
    // @ts-expect-error -- metres are not days
    addDays(date, metres),
    // @ts-expect-error -- kilometres are not days
    addDays(date, km),
    // @ts-expect-error -- a day number is not a date
    addDays(dayNumber(date), 1),
    // @ts-expect-error -- any text is no date: it is checked first
    addDays('2026-11-25', 1),
    // @ts-expect-error -- kilometres are not a day number
    fromDayNumber(km),
    // @ts-expect-error -- metres are not kilometres in a reading of the forecaster
    { day: dayNumber(date), km: metres } satisfies DayKm,
    // @ts-expect-error -- day and distance the wrong way round
    { day: km, km: dayNumber(date) } satisfies DayKm,
  ];
};

test('what does not mix for the compiler is plain numbers when it runs', () => {
  const distance = fromTyped({ value: 1, unit: 'km' });
  expect(distance.ok && addMetres(distance.value, distance.value)).toBe(2000);
  expect(daysBetween(day('2026-11-25'), day('2026-11-26'))).toBe(1);
  expect(typeof mixed).toBe('function');
});
