import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';
import { ok, refuse, type Result } from '../result/result.ts';

declare const unitName: unique symbol;

/** A volume of a fluid in whole microlitres (cubic millimetres), more than 0. */
export type Microlitres = number & { readonly [unitName]: 'Microlitres' };

/** Units of volume; those of the United States and of Britain differ and are never taken for each other. */
export const volumeUnitSchema = z.enum(['l', 'ml', 'us-qt', 'us-pt', 'us-fl-oz', 'us-gal', 'imp-qt', 'imp-pt', 'imp-fl-oz', 'imp-gal'], refusedBy('unknown-volume-unit'));
export type VolumeUnit = z.infer<typeof volumeUnitSchema>;

const US_GALLON = 3_785_411.784;
const IMPERIAL_GALLON = 4_546_090;

/**
 * Microlitres in one unit, exact: the gallons by definition, the rest their quarters, eighths and 128th or 160th parts.
 *
 * Source: NIST SP 811 (2008) B.8 prints 3.785 412 L for the US gallon of 231 cubic inches (rounded value seen in a copy, full
 * digits computed); the imperial gallon of 4.546 09 L from memory.
 */
export const MICROLITRES_IN: Readonly<Record<VolumeUnit, number>> = {
  'l': 1_000_000,
  'ml': 1000,
  'us-gal': US_GALLON,
  'us-qt': US_GALLON / 4,
  'us-pt': US_GALLON / 8,
  'us-fl-oz': US_GALLON / 128,
  'imp-gal': IMPERIAL_GALLON,
  'imp-qt': IMPERIAL_GALLON / 4,
  'imp-pt': IMPERIAL_GALLON / 8,
  'imp-fl-oz': IMPERIAL_GALLON / 160,
};

/** A volume as a person typed or read it. */
export interface VolumeAsTyped {
  readonly value: number;
  readonly unit: VolumeUnit;
}

/** The largest volume taken: 1000 litres, far above any car's. */
const LARGEST = 1_000_000_000;

/**
 * A volume as typed in whole microlitres, to the nearest.
 *
 * @example volumeFromTyped({ value: 5, unit: 'us-qt' }) //=> { ok: true, value: 4_731_765 }
 * @example volumeFromTyped({ value: 0, unit: 'l' }) //=> refused 'not-a-volume'
 */
export function volumeFromTyped(typed: VolumeAsTyped): Result<Microlitres> {
  const value = Math.round(typed.value * MICROLITRES_IN[typed.unit]);
  return value > 0 && value <= LARGEST ? ok(value as Microlitres) : refuse('not-a-volume', { value: String(typed.value) });
}

/** A volume in a unit, with decimals. @example volumeIn(4_731_765 as Microlitres, 'l') //=> 4.731765 */
export function volumeIn(value: Microlitres, unit: VolumeUnit): number {
  return value / MICROLITRES_IN[unit];
}
