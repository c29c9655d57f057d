import { z } from 'zod';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { quantitySchema } from '../units/quantity.ts';
import { specifications } from './specification.ts';

/** Something that can be bought: a filter, an oil, a kit of several parts. */
export const partSchema = z.strictObject({
  id: idSchema,
  name: plainText(120),
  number: plainText(60).nullable(),
  /** The specifications it is recorded as meeting. */
  meets: z.array(idSchema).max(20),
  /** Makes it a kit: the single parts inside. */
  contains: z.array(z.strictObject({ part: idSchema, quantity: quantitySchema })).max(40),
});
export type Part = z.infer<typeof partSchema>;

export const parts = family('part', 'parts', partSchema);
export const partSet = factEntry('part-set', parts, {
  car: () => null,
  refersTo: (part) => [...refers(specifications, ...part.meets), ...part.contains.map((inside) => ({ family: 'part', id: inside.part }))],
});
