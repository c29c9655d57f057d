import { z } from 'zod';
import { carSchema } from '../fleet/car.ts';
import { sha256Schema } from '../result/id.ts';
import { packPeriodSchema } from './pack-period.ts';
import { withholdSchema } from './withheld-fields.ts';

/** As many pages of a document are shown before it is written. */
export const MOST_PREVIEW_PAGES = 40;
/** The largest pack that a page hands over, and the largest piece of one, in base64. */
export const LARGEST_HANDED_BYTES = 100_000_000;
export const LARGEST_PIECE_BASE64 = 8_000_000;

/** What a keeper chooses for a pack. */
export const packChoiceSchema = z.strictObject({
  car: z.string().min(1).max(80),
  withhold: withholdSchema.default([]),
  papers: z.boolean().default(true),
  /** Of its papers only these, by their digests; null: all. */
  onlyPapers: z.array(sha256Schema).max(20_000).nullable().default(null),
  /** The photograph on the first page; null: one that is called by the car's name, where there is one. */
  cover: sha256Schema.nullable().default(null),
  /** What is dated outside these days is left out, and the pack says so. */
  period: packPeriodSchema.default({ from: null, to: null }),
  /** Copies in which parts are blacked out name the paper they were made from by its digest: it is proven, and what is black may be tried for. */
  nameOriginals: z.boolean().default(false),
  /**
   * The packs of earlier keepers go along byte for byte, with what is withheld here, or are left out, and what came with them is not proven.
   * null: they go along, and a pack is not written where anything is withheld.
   */
  previous: z.enum(['whole', 'left-out']).nullable().default(null),
  paperSize: z.enum(['A4', 'LETTER']).default('A4'),
});

/** What a pack will hold, told before it is written. */
export const packPreviewSchema = z.object({
  /** The name under which its pages are asked for. */
  preview: z.string(),
  pages: z.int(),
  /** How many of them can be looked at here. */
  shown: z.int(),
  files: z.int(),
  bytes: z.int(),
  figures: z.array(z.object({ name: z.string(), text: z.string() })),
  gaps: z.array(z.string()),
  open: z.array(z.string()),
  withheld: z.array(z.string()),
});
export type PackPreview = z.infer<typeof packPreviewSchema>;

/** What came of taking in a pack. */
export const takenInSchema = z.object({ car: carSchema, name: z.string(), records: z.int(), readings: z.int(), left: z.int(), notes: z.array(z.string()), /** All that it wrote, for `entry.withdraw`: a taking in is undone as a whole. */ undo: z.array(z.int()) });
