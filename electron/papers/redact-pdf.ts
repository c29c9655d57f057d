import PDFDocument from 'pdfkit';
import { MOST_REDACTED_PAGES } from '../../shared-core/records/paper-redaction.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import type { PdfThread } from './pdf-thread.ts';
import { readPdf } from './read-pdf.ts';
import { redactPageImage, type Blackening } from './redact-image.ts';
import { renderPdfPage } from './render-pdf-page.ts';

const DOTS_PER_INCH = 200;
const MOST_PIXELS_WIDE = 6000;

/** A new PDF and how many pages it has. */
export interface RedactedPdf {
  readonly bytes: Uint8Array;
  readonly pages: number;
}

/**
 * A copy of a PDF in which every page is a picture, marked or not: no layer of text, attachment, note, earlier state or field of the first one
 * is left. Pages keep their size. Refused `too-many-pages`, or as reading and drawing are.
 */
export async function redactPdf(thread: PdfThread, bytes: Uint8Array, { turned, marks }: Blackening): Promise<Result<RedactedPdf>> {
  const read = await readPdf(thread, bytes);
  if (!read.ok) return read;
  const { pages } = read.value;
  if (pages > MOST_REDACTED_PAGES) return refuse('too-many-pages', { pages, most: MOST_REDACTED_PAGES });
  const pdf = emptyPdf();
  const ended = gather(pdf);
  for (let page = 1; page <= pages; page += 1) {
    const drawn = await renderPdfPage(thread, bytes, page, MOST_PIXELS_WIDE, DOTS_PER_INCH);
    if (!drawn.ok) {
      pdf.end();
      return drawn;
    }
    const { width, height } = drawn.value.page;
    const size: [number, number] = turned % 180 === 0 ? [width, height] : [height, width];
    const picture = await redactPageImage(drawn.value, { turned, marks: marks.filter((mark) => mark.page === page) });
    pdf.addPage({ size, margin: 0 }).image(Buffer.from(picture), 0, 0, { width: size[0], height: size[1] });
  }
  pdf.end();
  return ok({ bytes: await ended, pages });
}

/** Its only dates say nothing, so that the same marks give the same bytes. */
function emptyPdf(): PDFKit.PDFDocument {
  return new PDFDocument({ autoFirstPage: false, pdfVersion: '1.7', info: { Creator: 'Trunnion', Producer: 'Trunnion', CreationDate: new Date(0), ModDate: new Date(0) } });
}

function gather(pdf: PDFKit.PDFDocument): Promise<Uint8Array> {
  const pieces: Buffer[] = [];
  return new Promise((resolve, reject) => {
    pdf.on('data', (piece: Buffer) => pieces.push(piece)).on('end', () => resolve(Buffer.concat(pieces))).on('error', reject);
  });
}
