import { z } from 'zod';
import { captureSchema } from './capture-time.ts';

/** What a paper's own bytes tell. It is derived, never a fact of the household: it can be made again at any time. */
export const paperContentsSchema = z.strictObject({
  version: z.literal(1),
  /** Whether it could be read; `locked`: a PDF behind a password. An opaque paper is `opaque`: nothing is looked for in it. */
  state: z.enum(['read', 'unreadable', 'locked', 'opaque']),
  /** Pages that can be shown; 1 for an image, 0 where nothing can. */
  pages: z.int().min(0),
  /** In points of the image, or of the first page in 1/72 inch; 0 where unknown. */
  width: z.int().min(0),
  height: z.int().min(0),
  capture: captureSchema.nullable(),
  /** The text of a PDF's first pages, a form feed between them. */
  text: z.string().max(60_000),
  /** The SHA-256 of the thumbnail; null where there is none. */
  thumbnail: z.string().nullable(),
});
export type PaperContents = z.infer<typeof paperContentsSchema>;
