import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';
import { ok, refuse, type Result } from '../result/result.ts';

declare const unitName: unique symbol;

/**
 * A depth, thickness or gap in whole nanometres, 0 or more. So fine because 1/32 inch is 793 750 nm exactly, and a tread of
 * 2/32 inch must come out the same however it was typed.
 */
export type Nanometres = number & { readonly [unitName]: 'Nanometres' };

/** Units of depth; 32nds of an inch are how tread is measured in the United States. */
export const depthUnitSchema = z.enum(['mm', 'in', '32nds'], refusedBy('unknown-depth-unit'));
export type DepthUnit = z.infer<typeof depthUnitSchema>;

/** Nanometres in one unit, exact. Source: NIST SP 811 (2008) B.8: 1 in = 25.4 mm exactly (seen in a table). */
export const NANOMETRES_IN: Readonly<Record<DepthUnit, number>> = { 'mm': 1_000_000, 'in': 25_400_000, '32nds': 793_750 };

/** A depth as a person typed or read it. */
export interface DepthAsTyped {
  readonly value: number;
  readonly unit: DepthUnit;
}

/** The largest depth taken: 2 metres. */
const LARGEST = 2_000_000_000;

/**
 * A depth as typed in whole nanometres, to the nearest.
 *
 * @example depthFromTyped({ value: 2, unit: '32nds' }) //=> { ok: true, value: 1_587_500 }
 * @example depthFromTyped({ value: -1, unit: 'mm' }) //=> refused 'not-a-depth'
 */
export function depthFromTyped(typed: DepthAsTyped): Result<Nanometres> {
  const value = Math.round(typed.value * NANOMETRES_IN[typed.unit]);
  // + 0 makes a negative zero an ordinary one; a value just below 0 is refused all the same.
  return typed.value >= 0 && value <= LARGEST ? ok((value + 0) as Nanometres) : refuse('not-a-depth', { value: String(typed.value) });
}

/** A depth in a unit, with decimals. @example depthIn(1_600_000 as Nanometres, '32nds') //=> 2.0157... */
export function depthIn(value: Nanometres, unit: DepthUnit): number {
  return value / NANOMETRES_IN[unit];
}
