import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { NANOMETRES_IN, type DepthUnit } from './depth.ts';

/** The unit in which a measurement was read; `32nds` of an inch is how tread is read in the United States, `1` a plain number. */
export const measuredUnitSchema = z.enum(['mm', 'in', '32nds', 'V', '%', 'C', 'F', 'grade', '1'], refusedBy('unknown-measured-unit'));
export type MeasuredUnit = z.infer<typeof measuredUnitSchema>;

/** What a unit measures; values of one dimension can be compared. */
export type Dimension = 'depth' | 'voltage' | 'share' | 'temperature' | 'grade' | 'number';

interface UnitRule {
  readonly dimension: Dimension;
  readonly toCanonical: (value: number) => number;
}

const same = (value: number) => value;
const inMillimetres = (unit: DepthUnit) => (value: number) => (value * NANOMETRES_IN[unit]) / NANOMETRES_IN.mm;

/** Source: degrees Celsius = (degrees Fahrenheit - 32) / 1.8 exactly (NIST SP 811 (2008) B.8; from memory). */
const RULES: Readonly<Record<MeasuredUnit, UnitRule>> = {
  mm: { dimension: 'depth', toCanonical: same },
  in: { dimension: 'depth', toCanonical: inMillimetres('in') },
  '32nds': { dimension: 'depth', toCanonical: inMillimetres('32nds') },
  V: { dimension: 'voltage', toCanonical: same },
  '%': { dimension: 'share', toCanonical: same },
  C: { dimension: 'temperature', toCanonical: same },
  F: { dimension: 'temperature', toCanonical: (value) => (value - 32) / 1.8 },
  grade: { dimension: 'grade', toCanonical: same },
  '1': { dimension: 'number', toCanonical: same },
};

const CANONICAL: Readonly<Record<Dimension, MeasuredUnit>> = { depth: 'mm', voltage: 'V', share: '%', temperature: 'C', grade: 'grade', number: '1' };

/** The unit in which values of a dimension are kept and compared. @example canonicalUnit('depth') //=> 'mm' */
export function canonicalUnit(dimension: Dimension): MeasuredUnit {
  return CANONICAL[dimension];
}

/** What a unit measures. @example dimensionOf('32nds') //=> 'depth' */
export function dimensionOf(unit: MeasuredUnit): Dimension {
  return RULES[unit].dimension;
}

/** A value as a person read it, in its own unit. */
export const typedValueSchema = z.strictObject({ value: z.number(refusedBy('not-a-measured-value')), unit: measuredUnitSchema });
export type TypedValue = z.infer<typeof typedValueSchema>;

/** Finer than any gauge, and coarse enough that 2/32 in and 1.5875 mm are one number. */
const STEPS_IN_ONE = 1e6;
const LARGEST = 1e6;

/**
 * A value in the canonical unit of its dimension, rounded to a millionth.
 *
 * @example canonicalValue({ value: 2, unit: '32nds' }) //=> { ok: true, value: 1.5875 }
 */
export function canonicalValue(typed: TypedValue): Result<number> {
  const value = RULES[typed.unit].toCanonical(typed.value);
  if (!Number.isFinite(value) || Math.abs(value) > LARGEST) return refuse('not-a-measured-value', { value: String(typed.value) }, ['value']);
  return ok(Math.round(value * STEPS_IN_ONE) / STEPS_IN_ONE + 0); // + 0 makes a negative zero an ordinary one
}

/** How many canonical units one step of a unit is, for rates. @example canonicalPerUnit('F') //=> 0.5555555555555556 */
export function canonicalPerUnit(unit: MeasuredUnit): number {
  return RULES[unit].toCanonical(1) - RULES[unit].toCanonical(0);
}
