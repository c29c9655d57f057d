import { z } from 'zod';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { sha256Schema } from '../result/id.ts';
import { refusedBy } from '../result/refused-by.ts';
import { papers } from './paper.ts';

/** As many pages of a PDF are drawn anew, and as many marks stand on one paper. */
export const MOST_REDACTED_PAGES = 200;
export const MOST_MARKS = 500;

const share = z.number().min(0).max(1);

/** A rectangle on a page, in fractions of the page as it is looked at: from its left and from its top. Pages are counted from 1. */
export const markSchema = z
  .strictObject({ page: z.int().min(1).max(MOST_REDACTED_PAGES), left: share, top: share, width: share.positive(), height: share.positive() })
  .refine(({ left, top, width, height }) => left + width <= 1.0001 && top + height <= 1.0001, refusedBy('mark-outside-page'));
export type Mark = z.infer<typeof markSchema>;

/** The parts of a paper that no copy of it shows to anyone else; the paper itself stays as it is. */
export const paperRedactionSchema = z.strictObject({
  /** The paper's own id. */
  id: sha256Schema,
  /** How the paper was turned, clockwise, where the marks stand as they are. */
  turned: z.literal([0, 90, 180, 270]),
  marks: z.array(markSchema).min(1).max(MOST_MARKS),
});
export type PaperRedaction = z.infer<typeof paperRedactionSchema>;

export const paperRedactions = family('paper-redaction', 'records', paperRedactionSchema);
export const paperRedacted = factEntry('paper-redacted', paperRedactions, { car: () => null, refersTo: (one) => refers(papers, one.id) });
export const redactionRemoved = factRemoval('paper-redaction-removed', paperRedactions);
