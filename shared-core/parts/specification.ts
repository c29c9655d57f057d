import { z } from 'zod';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { quantitySchema } from '../units/quantity.ts';

/** What a part or fluid must meet: an approval, a grade, a size. Kept apart from the parts that meet it. */
export const specificationSchema = z.strictObject({
  id: idSchema,
  name: plainText(120),
  unit: z.enum(['each', 'litre', 'kilogram', 'metre', 'set']),
  /** Amounts come in multiples of this: 1 for things counted, null for what is poured or cut. */
  step: quantitySchema.nullable(),
  note: longText(500),
});
export type Specification = z.infer<typeof specificationSchema>;

export const specifications = family('specification', 'parts', specificationSchema);
export const specificationSet = factEntry('specification-set', specifications, { car: () => null });
