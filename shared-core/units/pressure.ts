import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';
import { ok, refuse, type Result } from '../result/result.ts';

declare const unitName: unique symbol;

/** A pressure above that of the air, as a gauge shows it, in whole pascals; more than 0. */
export type Pascals = number & { readonly [unitName]: 'Pascals' };

/** Units of pressure. */
export const pressureUnitSchema = z.enum(['bar', 'kPa', 'psi', 'kgf-cm2'], refusedBy('unknown-pressure-unit'));
export type PressureUnit = z.infer<typeof pressureUnitSchema>;

/** Newtons in one pound-force over square metres in one square inch. */
const POUND_FORCE_A_SQUARE_INCH = 4.448_221_615_260_5 / 0.0254 ** 2;

/**
 * Pascals in one unit.
 *
 * Source: NIST SP 811 (2008) B.8 prints 6 894.757 Pa for the psi (seen in a copy, full digits computed) and 98 066.5 Pa for
 * the kgf/cm2; the bar is 100 kPa (seen in a handbook).
 */
export const PASCALS_IN: Readonly<Record<PressureUnit, number>> = { 'bar': 100_000, 'kPa': 1000, 'psi': POUND_FORCE_A_SQUARE_INCH, 'kgf-cm2': 98_066.5 };

/** A pressure as a person typed or read it. */
export interface PressureAsTyped {
  readonly value: number;
  readonly unit: PressureUnit;
}

/** The largest pressure taken: 200 bar, as of an air conditioner's high side many times over. */
const LARGEST = 20_000_000;

/**
 * A pressure as typed in whole pascals, to the nearest.
 *
 * @example pressureFromTyped({ value: 32, unit: 'psi' }) //=> { ok: true, value: 220_632 }
 * @example pressureFromTyped({ value: 0, unit: 'bar' }) //=> refused 'not-a-pressure'
 */
export function pressureFromTyped(typed: PressureAsTyped): Result<Pascals> {
  const value = Math.round(typed.value * PASCALS_IN[typed.unit]);
  return value > 0 && value <= LARGEST ? ok(value as Pascals) : refuse('not-a-pressure', { value: String(typed.value) });
}

/** A pressure in a unit, with decimals. @example pressureIn(220_000 as Pascals, 'psi') //=> 31.9083... */
export function pressureIn(value: Pascals, unit: PressureUnit): number {
  return value / PASCALS_IN[unit];
}
