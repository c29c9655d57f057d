import { z } from 'zod';
import { HOUSEHOLD_SUBJECT, type Entry, type EntryKind } from './entry-kind.ts';

const withdrawnSchema = z.strictObject({
  /** The numbers of the entries undone: one, or a whole import. */
  entries: z.array(z.int().min(0)).min(1).max(200_000),
  why: z.string().max(500),
  subject: z.string(),
});
export type Withdrawn = z.infer<typeof withdrawnSchema>;

/** Undoes entries: they stay in the journal and no longer stand. It is not itself undone. */
export const withdrawnKind: EntryKind<Withdrawn> = {
  kind: 'withdrawn',
  version: 1,
  schema: withdrawnSchema,
  subject: (values) => values.subject || HOUSEHOLD_SUBJECT,
  apply: () => [],
  refersTo: () => [],
};

/** The numbers an entry undoes: none unless it is a withdrawal. */
export function withdrawnSeqs(entry: Pick<Entry, 'kind' | 'values'>): readonly number[] {
  return entry.kind === withdrawnKind.kind ? withdrawnSchema.parse(entry.values).entries : [];
}
