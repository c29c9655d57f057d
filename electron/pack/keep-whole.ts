import type { Block } from '../../shared-core/handover/document-value.ts';
import { papersHeight } from './draw-picture.ts';
import { tableHeight } from './draw-table.ts';
import type { PaperPictures } from './paper-pictures.ts';
import { BOLD, HEADING_SIZE, LABEL_SHARE, makeRoom, REGULAR, TEXT_SIZE, type Drawing } from './paper-page.ts';

const ENDS_SECTION: ReadonlySet<Block['kind']> = new Set(['heading', 'new-page', 'cover', 'chart']);

/** Starts a new page where what stands under a heading fits on one, and not on what is left of this one. */
export function keepWhole(drawing: Drawing, blocks: readonly Block[], pictures: PaperPictures): void {
  const [heading, next] = blocks;
  const under = blocks.findIndex((block, at) => at > (next?.kind === 'heading' ? 1 : 0) && ENDS_SECTION.has(block.kind));
  const section = blocks.slice(0, under < 0 ? blocks.length : under);
  // A part of the document may run over pages; what is of one thing should not.
  if (heading?.kind !== 'heading' || !section.some((block) => block.kind === 'heading' && block.level === 3)) return;
  const height = section.reduce((sum, block) => sum + blockHeight(drawing, block, pictures), 0);
  if (height <= drawing.bottom - drawing.top) makeRoom(drawing, height);
}

/** How high a block is, in points; what has no height of its own here ends a section. */
function blockHeight(drawing: Drawing, block: Block, pictures: PaperPictures): number {
  const { pdf, width } = drawing;
  switch (block.kind) {
    case 'heading':
      return pdf.font(BOLD).fontSize(HEADING_SIZE[block.level]).heightOfString(block.text, { width }) + (block.level === 2 ? 17 : 13);
    case 'paragraph':
      return pdf.font(REGULAR).fontSize(TEXT_SIZE).heightOfString(block.text, { width, lineGap: 1.5 }) + 5;
    case 'facts':
      return block.rows.reduce((sum, row) => sum + factHeight(drawing, row), 6);
    case 'list':
      return block.items.reduce((sum, text) => sum + pdf.font(REGULAR).fontSize(TEXT_SIZE).heightOfString(text, { width: width - 14 }) + 3, 4);
    case 'table':
      return tableHeight(drawing, block);
    case 'papers':
      return papersHeight(drawing, block, pictures);
    default:
      return 0;
  }
}

/** How high a label and its value are, side by side; in points. */
export function factHeight({ pdf, width }: Drawing, [name, value]: readonly [string, string]): number {
  const label = width * LABEL_SHARE;
  pdf.font(REGULAR).fontSize(TEXT_SIZE);
  return Math.max(pdf.heightOfString(name, { width: label - 10 }), pdf.heightOfString(value, { width: width - label })) + 4;
}
