import type { DistanceAsTyped } from '../units/distance.ts';
import type { Limit } from './limit.ts';

/**
 * A limit under severe use: months floor(f m), at least 1; distance f D; f from 0.4 to 1.
 *
 * @example underSevereUse({ months: 12, distance: { value: 10_000, unit: 'mi' } }, 0.7) //=> { months: 8, distance: { value: 7000, unit: 'mi' } }
 */
export function underSevereUse(limit: Limit, factor: number): Limit {
  return {
    months: limit.months === null ? null : Math.max(1, Math.floor(factor * limit.months + TINY)),
    distance: limit.distance === null ? null : scaled(limit.distance, factor),
  };
}

/** 0.7 * 10 is 7.000000000000001 or 6.999999999999999 in floating point; a whole product must stay whole. */
const TINY = 1e-9;

function scaled(distance: DistanceAsTyped, factor: number): DistanceAsTyped {
  return { value: Math.round(distance.value * factor * 1e6) / 1e6, unit: distance.unit };
}
