import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { quantitySchema } from '../units/quantity.ts';
import { lots } from './lot.ts';

/** Something kept to be disposed of rightly: old oil, a battery, what has expired; and where and when it went. */
export const wasteSchema = z.strictObject({
  id: idSchema,
  what: plainText(120),
  quantity: quantitySchema.nullable(),
  unit: z.enum(['each', 'litre', 'kilogram', 'metre', 'set']).nullable(),
  since: dateSchema,
  where: plainText(60).nullable(),
  lot: idSchema.nullable(),
  disposed: z.strictObject({ on: dateSchema, how: plainText(160), paper: sha256Schema.nullable() }).nullable(),
  note: longText(300),
});
export type Waste = z.infer<typeof wasteSchema>;

export const wastes = family('waste', 'parts', wasteSchema);
export const wasteKept = factEntry('waste-kept', wastes, {
  car: () => null,
  refersTo: (waste) => [...refers(lots, waste.lot), ...(waste.disposed?.paper == null ? [] : [{ family: 'paper', id: waste.disposed.paper }])],
});
