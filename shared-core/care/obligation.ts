import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { priceSchema } from '../units/money.ts';

/** What a dated duty is about. */
export const obligationKindSchema = z.enum(['roadworthiness-test', 'road-tax', 'insurance', 'warranty-end', 'printed-expiry', 'other']);

/** A dated duty of a car. */
export const obligationSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  kind: obligationKindSchema,
  /** What it is, where the kind does not say enough: "sealant bottle". */
  name: plainText(80).nullable(),
  /** The last day on which it still holds. */
  lastValidDay: dateSchema,
  /** How long a renewal lasts; null where it is not renewed. */
  months: z.int().min(1).max(120).nullable(),
  /** A renewal in the last month keeps the day. */
  keepsDate: z.boolean(),
  /** Days ahead at which one should start to arrange it; the least notice counts where this is less. */
  noticeDays: z.int().min(0).max(365),
  price: priceSchema.nullable(),
});
export type Obligation = z.infer<typeof obligationSchema>;

export const obligations = family('obligation', 'care', obligationSchema);
export const obligationSet = factEntry('obligation-set', obligations, {
  car: (obligation) => obligation.car,
  refersTo: (obligation) => refers(cars, obligation.car),
});
