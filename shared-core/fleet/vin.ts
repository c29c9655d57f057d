import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';

const VALUE_OF: Readonly<Record<string, number>> = {
  A: 1, B: 2, C: 3, D: 4, E: 5, F: 6, G: 7, H: 8, J: 1, K: 2, L: 3, M: 4, N: 5, P: 7, R: 9, S: 2, T: 3, U: 4, V: 5, W: 6, X: 7, Y: 8, Z: 9,
};
const WEIGHTS: readonly number[] = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];

/** 17 letters and digits without I, O and Q; typed letters are taken in either case. */
export const vinShapeSchema = z.string().trim().toUpperCase().regex(/^[A-HJ-NPR-Z0-9]{17}$/, refusedBy('not-a-vin'));

/**
 * The check digit that position 9 of a North American vehicle identification number must hold: 0 to 9 or X.
 * Elsewhere position 9 is often a filler, so that a difference is a remark and never a refusal.
 *
 * Source: 49 CFR 565.15 tables III to V (seen in quotation; its worked example recomputed).
 * @example vinCheckDigit('1M8GDM9AXKP042788') //=> 'X'
 */
export function vinCheckDigit(vin: string): string {
  const sum = WEIGHTS.reduce((total, weight, at) => total + weight * valueOf(vin.charAt(at)), 0);
  return sum % 11 === 10 ? 'X' : String(sum % 11);
}

/** Whether position 9 holds the check digit. @example vinChecks('11111111111111111') //=> true */
export function vinChecks(vin: string): boolean {
  return vin.charAt(8) === vinCheckDigit(vin);
}

function valueOf(character: string): number {
  return VALUE_OF[character] ?? Number(character);
}
