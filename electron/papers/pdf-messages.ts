/** What the thread for PDFs is asked of one document. Pages are counted from 1. */
export type PdfRequest =
  | { readonly kind: 'read'; readonly bytes: Uint8Array; readonly mostPages: number; readonly mostLetters: number }
  | { readonly kind: 'render'; readonly bytes: Uint8Array; readonly page: number; readonly pixelsWide: number; readonly mostDotsPerInch: number | null };

/** How many pages a PDF has, the size of its first in points, and the text of each page that was read. */
export interface PdfContents {
  readonly pages: number;
  readonly width: number;
  readonly height: number;
  readonly text: readonly string[];
}

/** A page as points of four bytes: red, green, blue, alpha; and the size of the page itself in 1/72 inch. */
export interface PageImage {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array;
  readonly page: { readonly width: number; readonly height: number };
}

/** What the thread answers; after `failed` it is not asked again. */
export type PdfReply =
  | { readonly kind: 'read'; readonly contents: PdfContents }
  | { readonly kind: 'rendered'; readonly image: PageImage }
  | { readonly kind: 'no-page' }
  | { readonly kind: 'failed'; readonly locked: boolean };
