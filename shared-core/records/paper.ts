import { z } from 'zod';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { sha256Schema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';

/** The kinds of file a paper may be; anything else is kept as it is and not shown. */
export const paperMediaSchema = z.enum(['application/pdf', 'image/jpeg', 'image/png', 'image/webp', 'application/octet-stream']);

/** A receipt, certificate or photograph, kept by the SHA-256 of its bytes. */
export const paperSchema = z.strictObject({
  id: sha256Schema,
  name: plainText(120),
  media: paperMediaSchema,
  bytes: z.int().min(1).max(1_000_000_000),
});
export type Paper = z.infer<typeof paperSchema>;

export const papers = family('paper', 'records', paperSchema);
export const paperKept = factEntry('paper-kept', papers, { car: () => null });
