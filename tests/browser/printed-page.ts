import type { Page } from 'playwright-core';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A page as it was printed: its paper and every piece of text on it, in points from the lower left corner. */
export interface PrintedPage {
  readonly width: number;
  readonly height: number;
  readonly pieces: readonly { readonly text: string; readonly x: number; readonly y: number; readonly width: number; readonly size: number }[];
}

/** Prints what the page prints on a paper, as the browser does it, and reads it with another program. */
export async function printedPages(page: Page, format: 'A4' | 'Letter'): Promise<readonly PrintedPage[]> {
  const bytes = await page.pdf({ format });
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  return Promise.all(Array.from({ length: pdf.numPages }, async (_, at) => {
    const one = await pdf.getPage(at + 1);
    const { width, height } = one.getViewport({ scale: 1 });
    const { items } = await one.getTextContent();
    const pieces = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [{ text: item.str, x: Number(item.transform[4]), y: Number(item.transform[5]), width: item.width, size: item.height }] : []));
    return { width, height, pieces };
  }));
}

/** Everything that a printed page says, in one line. */
export function printedText({ pieces }: PrintedPage): string {
  return pieces.map((piece) => piece.text).join(' ').replace(/\s+/g, ' ');
}
