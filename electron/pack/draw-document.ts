import type { Block, DocumentValue } from '../../shared-core/handover/document-value.ts';
import { assertNever } from '../../shared-core/result/assert.ts';
import { drawChart } from './draw-chart.ts';
import { drawCover, drawPapers } from './draw-picture.ts';
import { factHeight, keepWhole } from './keep-whole.ts';
import type { PaperPictures } from './paper-pictures.ts';
import { drawTable } from './draw-table.ts';
import { printableDocument } from './printable-text.ts';
import { addTagged, artifact, BOLD, drawFeet, HEADING_SIZE, INK, LABEL_SHARE, LATE, makeRoom, newDrawing, openTagged, QUIET, REGULAR, RULE, TEXT_SIZE, WARM, type Drawing } from './paper-page.ts';

/** Room that must be left for what follows a heading, so that none stands at the foot of a page. */
const KEPT_WITH = { 1: 60, 2: 80, 3: 130 } as const;

/** How a document is drawn. */
export interface DrawOptions {
  /** The document's only date, YYYY-MM-DD. */
  readonly made: string;
  readonly size: 'A4' | 'LETTER';
  readonly pictures: PaperPictures;
}

/** Draws a document value as a tagged PDF with bookmarks, page numbers and embedded fonts; same input, same bytes. Characters that no font has are told by their number. */
export async function drawDocument(value: DocumentValue, options: DrawOptions): Promise<Uint8Array> {
  const drawing = newDrawing(value, options.made, options.size);
  const pieces: Buffer[] = [];
  const ended = new Promise<void>((resolve, reject) => {
    drawing.pdf.on('data', (piece: Buffer) => pieces.push(piece)).on('end', resolve).on('error', reject);
  });
  const { blocks, foot } = printableDocument(value).document;
  blocks.forEach((block, at) => {
    // What follows a heading at once stays with it: that was weighed with it.
    if (block.kind === 'heading' && blocks[at - 1]?.kind !== 'heading') keepWhole(drawing, blocks.slice(at), options.pictures);
    drawBlock(drawing, block, options);
  });
  drawing.root.end();
  drawFeet(drawing, foot);
  drawing.pdf.end();
  await ended;
  return Buffer.concat(pieces);
}

function drawBlock(drawing: Drawing, block: Block, options: DrawOptions): void {
  switch (block.kind) {
    case 'heading':
      return drawHeading(drawing, block.level, block.text);
    case 'paragraph':
      return drawParagraph(drawing, block.text);
    case 'notice':
      return drawNotice(drawing, block.text);
    case 'facts':
      return drawFacts(drawing, block.rows);
    case 'list':
      return drawList(drawing, block.items);
    case 'table':
      return drawTable(drawing, block);
    case 'chart':
      return drawChart(drawing, block);
    case 'cover':
      return drawCover(drawing, block, options.pictures);
    case 'papers':
      return drawPapers(drawing, block, options.pictures);
    case 'new-page':
      drawing.pdf.addPage();
      return;
    default:
      assertNever(block);
  }
}

/** A heading keeps some of what follows with it, and is a bookmark down to the second level. */
function drawHeading(drawing: Drawing, level: 1 | 2 | 3, text: string): void {
  const { pdf, root, left, width } = drawing;
  makeRoom(drawing, HEADING_SIZE[level] * 2 + KEPT_WITH[level]);
  if (level > 1 && pdf.y > 60) pdf.y += level === 2 ? 14 : 10;
  if (level < 3) pdf.outline.addItem(text);
  addTagged(drawing, root, `H${level}`, { title: text }, () => void pdf.font(BOLD).fontSize(HEADING_SIZE[level]).fillColor(INK).text(text, left, pdf.y, { width }));
  pdf.y += level === 1 ? 8 : 3;
}

function drawParagraph(drawing: Drawing, text: string): void {
  const { pdf, root, left, width } = drawing;
  addTagged(drawing, root, 'P', {}, () => void pdf.font(REGULAR).fontSize(TEXT_SIZE).fillColor(INK).text(text, left, pdf.y, { width, lineGap: 1.5 }));
  pdf.y += 5;
}

function drawNotice(drawing: Drawing, text: string): void {
  const { pdf, root, left, width } = drawing;
  pdf.font(BOLD).fontSize(TEXT_SIZE + 1);
  const height = pdf.heightOfString(text, { width: width - 24 }) + 16;
  makeRoom(drawing, height);
  const top = pdf.y;
  artifact(drawing, () => pdf.rect(left, top, width, height).lineWidth(1.2).fillAndStroke(WARM, LATE));
  addTagged(drawing, root, 'P', {}, () => void pdf.font(BOLD).fontSize(TEXT_SIZE + 1).fillColor(LATE).text(text, left + 12, top + 8, { width: width - 24 }));
  pdf.y = top + height + 10;
}

/** Labels and values side by side, a list of pairs to a reader of the structure. */
function drawFacts(drawing: Drawing, rows: readonly (readonly [string, string])[]): void {
  const { pdf, root, left, width } = drawing;
  const label = width * LABEL_SHARE;
  const list = openTagged(drawing, root, 'L');
  for (const [name, value] of rows) {
    const height = factHeight(drawing, [name, value]);
    makeRoom(drawing, height);
    const top = pdf.y;
    const item = openTagged(drawing, list, 'LI');
    addTagged(drawing, item, 'Lbl', {}, () => void pdf.fillColor(QUIET).text(name, left, top, { width: label - 10 }));
    addTagged(drawing, item, 'LBody', {}, () => void pdf.fillColor(INK).text(value, left + label, top, { width: width - label }));
    item.end();
    artifact(drawing, () => pdf.moveTo(left, top + height - 2).lineTo(left + width, top + height - 2).lineWidth(0.4).stroke(RULE));
    pdf.y = top + height;
  }
  list.end();
  pdf.y += 6;
}

function drawList(drawing: Drawing, items: readonly string[]): void {
  const { pdf, root, left, width } = drawing;
  const list = openTagged(drawing, root, 'L');
  for (const text of items) {
    pdf.font(REGULAR).fontSize(TEXT_SIZE);
    makeRoom(drawing, pdf.heightOfString(text, { width: width - 14 }) + 4);
    const top = pdf.y;
    const item = openTagged(drawing, list, 'LI');
    addTagged(drawing, item, 'Lbl', {}, () => void pdf.fillColor(LATE).text('•', left, top, { width: 12 }));
    addTagged(drawing, item, 'LBody', {}, () => void pdf.fillColor(INK).text(text, left + 14, top, { width: width - 14 }));
    item.end();
    pdf.y += 3;
  }
  list.end();
  pdf.y += 4;
}
