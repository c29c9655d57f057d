import { z } from 'zod';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { quantitySchema } from '../units/quantity.ts';
import { fluidSchema } from './fluid.ts';

/** One thing asked of a part, as the handbook words it. */
export const characteristicSchema = z.strictObject({
  kind: z.enum(['approval', 'grade', 'viscosity', 'size', 'thread', 'handedness', 'material', 'other']),
  text: plainText(120),
});
export type Characteristic = z.infer<typeof characteristicSchema>;

/** What a part or fluid must meet: an approval, a grade, a size. Kept apart from the parts that meet it. */
export const specificationSchema = z.strictObject({
  id: idSchema,
  name: plainText(120),
  asks: z.array(characteristicSchema).max(20),
  /** For what may not be mixed at will; null: not a fluid of that sort. */
  fluid: fluidSchema.nullable(),
  /** The keeper says that one need may be met by several parts together. */
  mix: z.boolean(),
  unit: z.enum(['each', 'litre', 'kilogram', 'metre', 'set']),
  /** Amounts come in multiples of this: 1 for things counted, null for what is poured or cut. */
  step: quantitySchema.nullable(),
  note: longText(500),
});
export type Specification = z.infer<typeof specificationSchema>;

export const specifications = family('specification', 'parts', specificationSchema);
export const specificationSet = factEntry('specification-set', specifications, {
  version: 2,
  car: () => null,
  // Version 1 was before characteristics were told apart.
  upgrade: (values) => ({ ...values, asks: [], fluid: null, mix: false }),
});
