import { z } from 'zod';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { quantitySchema } from '../units/quantity.ts';
import { specifications } from './specification.ts';

/** Who says that a part meets a specification, and on what ground: a grade alone is no approval. */
export const statementSchema = z.strictObject({
  specification: idSchema,
  by: z.enum(['part-maker', 'car-maker', 'seller', 'keeper']),
  basis: z.enum(['approval', 'grade', 'fit']),
  /** Where it is said: a data sheet, a list of approvals, the label. */
  source: plainText(160).nullable(),
});
export type Statement = z.infer<typeof statementSchema>;

const notKept = refusedBy('not-days-opened');
/** Days that something keeps once opened; null: as long as it is good unopened. */
export const keepsOpenedSchema = z.int(notKept).min(1, notKept).max(3650, notKept).nullable();

/** Something that can be bought: a filter, an oil, a kit of several parts. */
export const partSchema = z.strictObject({
  id: idSchema,
  name: plainText(120),
  number: plainText(60).nullable(),
  /** The specifications it is recorded as meeting. */
  meets: z.array(idSchema).max(20),
  /** Who says so; for a specification that is not named here it is the keeper, who entered it. */
  stated: z.array(statementSchema).max(20),
  keepsOpenedDays: keepsOpenedSchema,
  /** Makes it a kit: the single parts inside. */
  contains: z.array(z.strictObject({ part: idSchema, quantity: quantitySchema })).max(40),
});
export type Part = z.infer<typeof partSchema>;

export const parts = family('part', 'parts', partSchema);
export const partSet = factEntry('part-set', parts, {
  version: 2,
  car: () => null,
  // Version 1 did not say who states that a part meets a specification.
  upgrade: (values) => ({ ...values, stated: [], keepsOpenedDays: null }),
  refersTo: (part) => [...refers(specifications, ...part.meets), ...part.contains.map((inside) => ({ family: 'part', id: inside.part }))],
});

/** Who says that a part meets a specification: as stated, else the keeper who entered it. @example statementOf(part, 'oil-a').by //=> 'keeper' */
export function statementOf(part: Part, specification: string): Statement {
  return part.stated.find((one) => one.specification === specification) ?? { specification, by: 'keeper', basis: 'fit', source: null };
}
