import { z } from 'zod';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { fluidSchema } from './fluid.ts';

/** One side of a pair: a specification by its id, or everything made on one base. */
export const mixSideSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('specification'), id: idSchema }),
  z.strictObject({ kind: z.literal('fluid'), fluid: fluidSchema }),
]);
export type MixSide = z.infer<typeof mixSideSchema>;

/** Two things that are not to meet in one system, as the keeper or a handbook has it: never, or only when one is asked and is sure. */
export const neverMixSchema = z.strictObject({
  id: idSchema,
  between: z.tuple([mixSideSchema, mixSideSchema]),
  rule: z.enum(['never', 'ask']),
  why: plainText(200),
  source: plainText(160).nullable(),
});
export type NeverMix = z.infer<typeof neverMixSchema>;

export const neverMixes = family('never-mix', 'parts', neverMixSchema);
export const neverMixSet = factEntry('never-mix-set', neverMixes, {
  car: () => null,
  refersTo: ({ between }) => between.flatMap((side) => (side.kind === 'specification' ? [{ family: 'specification', id: side.id }] : [])),
});
export const neverMixRemoved = factRemoval('never-mix-removed', neverMixes);
