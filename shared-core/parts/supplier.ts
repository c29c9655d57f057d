import { z } from 'zod';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { priceSchema } from '../units/money.ts';

/** Who sells parts, and on what terms of delivery. */
export const supplierSchema = z.strictObject({
  id: idSchema,
  name: plainText(80),
  deliveryMinor: priceSchema,
  /** Goods of this value are delivered free; null: never free. */
  freeFromMinor: priceSchema.nullable(),
  minimumMinor: priceSchema,
  leadDays: z.int().min(0).max(365),
});
export type Supplier = z.infer<typeof supplierSchema>;

export const suppliers = family('supplier', 'parts', supplierSchema);
export const supplierSet = factEntry('supplier-set', suppliers, { car: () => null });
