import { ok, refuse, type Result } from '../result/result.ts';

declare const unitName: unique symbol;

/**
 * A number of one unit in a formula. A plain number is taken as it is; a number of another unit, metres among them, is a
 * compile error.
 */
export type Of<Unit extends string> = number & { readonly [unitName]?: Unit };

/** A whole number of metres on an odometer or between two readings; 0 or more; made only by `metres` and what checks like it. */
export type Metres = number & { readonly [unitName]: 'Metres' };

/** Kilometres with decimals, for the forecaster's formulas. */
export type Kilometres = Of<'Kilometres'>;

/** The unit an odometer shows. */
export type DistanceUnit = 'km' | 'mi';

/** A distance as a person typed or reads it. */
export interface DistanceAsTyped {
  readonly value: number;
  readonly unit: DistanceUnit;
}

/** Metres in one unit; the mile is exact (Source: NIST SP 811 (2008) B.8: 1 mi = 1.609 344 km; seen in a copy). */
export const METRES_IN: Readonly<Record<DistanceUnit, number>> = { km: 1000, mi: 1609.344 };

/** The largest distance taken as a reading: 10 million km. More is a slip of the keyboard. */
export const LARGEST_METRES = 10_000_000_000;

/**
 * A whole number of metres, checked.
 *
 * @example metres(1500) //=> { ok: true, value: 1500 }
 * @example metres(-1) //=> refused 'not-a-distance'
 */
export function metres(value: number): Result<Metres> {
  return Number.isSafeInteger(value) && value >= 0 && value <= LARGEST_METRES
    ? ok((value + 0) as Metres) // + 0 makes a negative zero an ordinary one
    : refuse('not-a-distance', { value: String(value) });
}

/**
 * Metres of a distance as typed, rounded to the whole metre. Anything below 0 is refused, however little.
 *
 * @example fromTyped({ value: 10_000, unit: 'mi' }) //=> { ok: true, value: 16_093_440 }
 */
export function fromTyped(typed: DistanceAsTyped): Result<Metres> {
  if (!Number.isFinite(typed.value) || typed.value < 0) return refuse('not-a-distance', { value: String(typed.value) });
  return metres(Math.round(typed.value * METRES_IN[typed.unit]));
}

/** Whole units shown for metres. @example inUnit(16_093_440 as Metres, 'mi') //=> 10_000 */
export function inUnit(value: Metres, unit: DistanceUnit): number {
  return Math.round(value / METRES_IN[unit]);
}

/** Metres as kilometres with decimals, for the forecaster's formulas. */
export function toKilometres(value: Metres): Kilometres {
  return value / 1000;
}

/** Kilometres of a formula as whole metres; what a formula puts below 0 is 0. */
export function metresFromKilometres(km: Kilometres): Metres {
  return Math.max(0, Math.round(km * 1000)) as Metres;
}

/** The sum of two distances. */
export function addMetres(a: Metres, b: Metres): Metres {
  return (a + b) as Metres;
}
