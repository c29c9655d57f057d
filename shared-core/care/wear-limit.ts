import { z } from 'zod';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { cars } from '../fleet/car.ts';
import { wheels } from '../fleet/wheel.ts';
import { must } from '../result/assert.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { canonicalValue, typedValueSchema, type TypedValue } from '../units/measured-value.ts';
import { measureKindSchema, measureNameSchema, measurePlaceSchema, wearWaySchema } from './measure-kind.ts';

/**
 * The least tread that two laws allow, by name: 1.6 mm in the United Kingdom and the European Union, 2/32 of an inch in the
 * United States. 2/32 in is 1.5875 mm, so 1.59 mm passes the one and fails the other.
 *
 * Source: 1.6 mm askthe.police.uk (seen; SI 1986/1078 reg. 27), Directive 89/459/EEC (value from memory); 2/32 in by state
 * inspection rules (seen; 49 CFR 570.9 from memory).
 */
export const TREAD_LAWS = {
  'tread-1.6-mm': { value: 1.6, unit: 'mm' },
  'tread-2-32-in': { value: 2, unit: '32nds' },
} as const satisfies Record<string, TypedValue>;
export type TreadLaw = keyof typeof TREAD_LAWS;

/** The names of the laws. */
export const treadLawSchema = z.enum(Object.keys(TREAD_LAWS) as [TreadLaw, ...TreadLaw[]]);

/** A limit the keeper set for what is measured: for one place, for one wheel, or for all of a kind. */
export const wearLimitSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  what: measureKindSchema,
  name: measureNameSchema.nullable(),
  place: measurePlaceSchema.nullable(),
  wheel: idSchema.nullable(),
  /** Null: the keeper took it back. */
  limit: typedValueSchema.nullable(),
  /** How it wears; only of something else, for the rest is known. */
  way: wearWaySchema.nullable(),
  source: plainText(120).nullable(),
});
export type WearLimit = z.infer<typeof wearLimitSchema>;

export const wearLimits = family('wear-limit', 'care', wearLimitSchema);
export const wearLimitSet = factEntry('wear-limit-set', wearLimits, {
  car: (limit) => limit.car,
  refersTo: (limit) => [...refers(cars, limit.car), ...refers(wheels, limit.wheel)],
});

/** What a service item is measured by: the places it covers (none named: all), and its limit; null: the one set for all of its kind on the car. */
export const itemMeasureSchema = z.strictObject({
  kind: measureKindSchema,
  name: measureNameSchema.nullable(),
  places: z.array(measurePlaceSchema).max(8),
  limit: typedValueSchema.nullable(),
  way: wearWaySchema.nullable(),
});
export type ItemMeasure = z.infer<typeof itemMeasureSchema>;

/** A limit in its canonical unit; one that was stored has been checked. @example limitValue({ value: 2, unit: '32nds' }) //=> 1.5875 */
export function limitValue(limit: TypedValue): number {
  const value = canonicalValue(limit);
  return must(value.ok ? value.value : null, 'a limit that was checked');
}

/**
 * Whether a value still passes: the limit itself is the last that does. Both in the canonical unit.
 *
 * @example passes(1.59, 1.5875, false) //=> true
 */
export function passes(value: number, limit: number, rises: boolean): boolean {
  return rises ? value <= limit : value >= limit;
}

/** The laws that a depth of tread (mm) passes. @example treadLawsPassed(1.59) //=> ['tread-2-32-in'] */
export function treadLawsPassed(depth: number): readonly TreadLaw[] {
  return treadLawSchema.options.filter((law) => passes(depth, limitValue(TREAD_LAWS[law]), false));
}
