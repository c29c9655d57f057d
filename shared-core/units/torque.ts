import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';
import { ok, refuse, type Result } from '../result/result.ts';

declare const unitName: unique symbol;

/** A torque in whole thousandths of a newton metre, more than 0. */
export type MillinewtonMetres = number & { readonly [unitName]: 'MillinewtonMetres' };

/** Units of torque. */
export const torqueUnitSchema = z.enum(['Nm', 'lbf-ft', 'lbf-in', 'kgf-m', 'kgf-cm'], refusedBy('unknown-torque-unit'));
export type TorqueUnit = z.infer<typeof torqueUnitSchema>;

/** Newtons in one pound-force: 0.453 592 37 kg at 9.806 65 m/s2, both exact. */
const POUND_FORCE = 4.448_221_615_260_5;
const METRES_IN_FOOT = 0.3048;
const KILOGRAM_FORCE = 9.806_65;

/**
 * Thousandths of a newton metre in one unit.
 *
 * Source: NIST SP 811 (2008) B.8 prints 1.355 818 and 0.112 984 8 N m (seen in a copy); full digits computed from the pound,
 * the foot and the standard acceleration.
 */
export const MILLINEWTON_METRES_IN: Readonly<Record<TorqueUnit, number>> = {
  'Nm': 1000,
  'lbf-ft': 1000 * POUND_FORCE * METRES_IN_FOOT,
  'lbf-in': (1000 * POUND_FORCE * METRES_IN_FOOT) / 12,
  'kgf-m': 1000 * KILOGRAM_FORCE,
  'kgf-cm': 10 * KILOGRAM_FORCE,
};

/** A torque as a person typed or read it. */
export interface TorqueAsTyped {
  readonly value: number;
  readonly unit: TorqueUnit;
}

/** The largest torque taken: 10 000 N m, far above any car's. */
const LARGEST = 10_000_000;

/**
 * A torque as typed in whole thousandths of a newton metre, to the nearest.
 *
 * @example torqueFromTyped({ value: 80, unit: 'lbf-ft' }) //=> { ok: true, value: 108_465 }
 * @example torqueFromTyped({ value: -1, unit: 'Nm' }) //=> refused 'not-a-torque'
 */
export function torqueFromTyped(typed: TorqueAsTyped): Result<MillinewtonMetres> {
  const value = Math.round(typed.value * MILLINEWTON_METRES_IN[typed.unit]);
  return value > 0 && value <= LARGEST ? ok(value as MillinewtonMetres) : refuse('not-a-torque', { value: String(typed.value) });
}

/** A torque in a unit, with decimals. @example torqueIn(110_000 as MillinewtonMetres, 'lbf-ft') //=> 81.1318... */
export function torqueIn(value: MillinewtonMetres, unit: TorqueUnit): number {
  return value / MILLINEWTON_METRES_IN[unit];
}
