import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import PDFDocument from 'pdfkit';
import type { DocumentValue } from '../../shared-core/handover/document-value.ts';

/** A drawing on paper under way: where the next block goes, and the parts of the tagged structure. */
export interface Drawing {
  readonly pdf: PDFKit.PDFDocument;
  readonly root: PDFKit.PDFStructureElement;
  readonly left: number;
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
}

/** Sizes in points. */
const MARGIN = 54;
const FOOT = 40;
export const TEXT_SIZE = 10;
export const HEADING_SIZE = { 1: 22, 2: 15, 3: 11.5 } as const;
/** Of the width, what labels take that stand before their values. */
export const LABEL_SHARE = 0.34;
export const INK = '#22303a';
export const QUIET = '#5b6770';
export const RULE = '#cfc6b4';
export const WARM = '#faf7f1';
export const LATE = '#7a3b5e';

/** Whole fonts, with Latin, Greek and Cyrillic, for a name may need any of them. What else there is, is told by `printableDocument`. */
const FONTS = dirname(createRequire(import.meta.url).resolve('@expo-google-fonts/source-sans-3/package.json'));
/** By their files: a document that begins with a file reads the same font again each time it is asked for under a name of its own. */
export const REGULAR = join(FONTS, '400Regular', 'SourceSans3_400Regular.ttf');
export const BOLD = join(FONTS, '600SemiBold', 'SourceSans3_600SemiBold.ttf');

/** A new tagged document; `made` (YYYY-MM-DD) is its only date, so that the same input gives the same bytes. */
export function newDrawing(value: DocumentValue, made: string, size: 'A4' | 'LETTER'): Drawing {
  const moment = new Date(`${made}T00:00:00Z`);
  const pdf = new PDFDocument({
    size,
    margins: { top: MARGIN, left: MARGIN, right: MARGIN, bottom: MARGIN + FOOT },
    bufferPages: true,
    pdfVersion: '1.7',
    subset: 'PDF/A-3a',
    tagged: true,
    lang: value.language,
    displayTitle: true,
    info: { Title: value.title, Subject: value.subject, Creator: 'Trunnion', Producer: 'Trunnion', CreationDate: moment, ModDate: moment },
    font: REGULAR,
  });
  const root = pdf.struct('Document');
  pdf.addStructure(root);
  pdf.font(REGULAR).fontSize(TEXT_SIZE).fillColor(INK);
  return { pdf, root, left: MARGIN, top: MARGIN, width: pdf.page.width - 2 * MARGIN, bottom: pdf.page.height - MARGIN - FOOT };
}

/** Starts a new page where what comes next would not fit; a block is never cut where it need not be. */
export function makeRoom({ pdf, bottom }: Drawing, height: number): void {
  if (pdf.y + height > bottom) pdf.addPage();
}

/** Draws something that is no content: rules, grounds, feet. Readers for the blind pass over it. */
export function artifact({ pdf }: Drawing, draw: () => void): void {
  pdf.markContent('Artifact', { type: 'Layout' });
  draw();
  pdf.endMarkedContent();
}

/** Puts the foot and the page number on every page, when all pages are there. */
export function drawFeet(drawing: Drawing, text: string): void {
  const { pdf, left, width } = drawing;
  const { start, count } = pdf.bufferedPageRange();
  for (let page = start; page < start + count; page += 1) {
    pdf.switchToPage(page);
    // The foot lies below the bottom margin; with the margin in force the text would start a new page.
    pdf.page.margins.bottom = 0;
    artifact(drawing, () => {
      const y = pdf.page.height - MARGIN;
      pdf.font(REGULAR).fontSize(8).fillColor(QUIET);
      pdf.text(text, left, y, { width: width - 80, lineBreak: false, ellipsis: true });
      pdf.text(`Page ${page - start + 1} of ${count}`, left + width - 80, y, { width: 80, align: 'right', lineBreak: false });
    });
  }
}

/** What a tagged element may carry beside its content; the published types of the library lag behind it. */
export interface TagOptions {
  readonly title?: string;
  readonly alt?: string;
  readonly bbox?: readonly [number, number, number, number];
  readonly scope?: 'Column' | 'Row';
}

/** A tagged element with its content drawn at once, put under a parent. */
export function addTagged({ pdf }: Drawing, parent: PDFKit.PDFStructureElement, tag: string, options: TagOptions, draw: () => void): void {
  parent.add(pdf.struct(tag, options as Parameters<PDFKit.PDFDocument['struct']>[1], draw));
}

/** A tagged element that holds others; it is to be ended when all are in it. */
export function openTagged({ pdf }: Drawing, parent: PDFKit.PDFStructureElement, tag: string): PDFKit.PDFStructureElement {
  const element = pdf.struct(tag);
  parent.add(element);
  return element;
}
