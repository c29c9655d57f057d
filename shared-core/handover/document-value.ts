import { z } from 'zod';

/** One thing on paper, in the order of reading; every text is ready to be printed. */
export const blockSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('heading'), level: z.union([z.literal(1), z.literal(2), z.literal(3)]), text: z.string() }),
  z.strictObject({ kind: z.literal('paragraph'), text: z.string() }),
  /** Something the reader must not miss. */
  z.strictObject({ kind: z.literal('notice'), text: z.string() }),
  z.strictObject({ kind: z.literal('facts'), rows: z.array(z.tuple([z.string(), z.string()])) }),
  z.strictObject({ kind: z.literal('list'), items: z.array(z.string()) }),
  z.strictObject({
    kind: z.literal('table'),
    caption: z.string(),
    columns: z.array(z.strictObject({ title: z.string(), share: z.number().positive(), align: z.enum(['left', 'right']) })),
    rows: z.array(z.array(z.string())),
  }),
  /** Every reading against time; the same numbers stand in a table after it. */
  z.strictObject({
    kind: z.literal('chart'),
    caption: z.string(),
    unit: z.string(),
    /** Points of one source are drawn alike. */
    points: z.array(z.strictObject({ date: z.string(), value: z.number(), source: z.string() })),
  }),
  /** One large picture. */
  z.strictObject({ kind: z.literal('cover'), caption: z.string(), paper: z.string() }),
  /** Papers side by side: the first page of each small, with its name; by name alone where it is not in the pack, with its digest unless that is kept back (empty). */
  z.strictObject({ kind: z.literal('papers'), items: z.array(z.strictObject({ caption: z.string(), paper: z.string(), path: z.string().nullable() })) }),
  z.strictObject({ kind: z.literal('new-page') }),
]);
export type Block = z.infer<typeof blockSchema>;

/** A document for people as a plain value: what the PDF is drawn from. */
export const documentSchema = z.strictObject({
  title: z.string(),
  language: z.string(),
  subject: z.string(),
  /** The foot of every page. */
  foot: z.string(),
  blocks: z.array(blockSchema),
});
export type DocumentValue = z.infer<typeof documentSchema>;

/** A heading. */
export function heading(level: 1 | 2 | 3, text: string): Block {
  return { kind: 'heading', level, text };
}

/** A paragraph. */
export function paragraph(text: string): Block {
  return { kind: 'paragraph', text };
}

/** A table; columns as title, share of the width, and alignment. */
export function table(caption: string, columns: readonly (readonly [string, number, ('left' | 'right')?])[], rows: readonly (readonly string[])[]): Block {
  return {
    kind: 'table',
    caption,
    columns: columns.map(([title, share, align]) => ({ title, share, align: align ?? 'left' })),
    rows: rows.map((row) => [...row]),
  };
}
