import type { Block } from '../../shared-core/handover/document-value.ts';
import { addTagged, artifact, BOLD, INK, makeRoom, openTagged, QUIET, REGULAR, RULE, WARM, type Drawing } from './paper-page.ts';

type Table = Extract<Block, { kind: 'table' }>;

const SIZE = 8.5;
const PADDING = 4;

interface Column {
  readonly left: number;
  readonly width: number;
  readonly align: 'left' | 'right';
}

/** Draws a table: its caption, a head that stands again on every page, rows that are never cut in two. */
export function drawTable(drawing: Drawing, block: Table): void {
  const { pdf, root, left, width } = drawing;
  const columns = columnsOf(drawing, block);
  const titles = block.columns.map((column) => column.title);
  makeRoom(drawing, 16 + 2 * rowHeight(drawing, columns, titles, BOLD) + 20);
  const table = openTagged(drawing, root, 'Table');
  addTagged(drawing, table, 'Caption', {}, () => void pdf.font(REGULAR).fontSize(SIZE).fillColor(QUIET).text(block.caption, left, pdf.y, { width }));
  pdf.y += 3;
  addRow(drawing, table, columns, titles, 'TH');
  for (const row of block.rows) {
    const height = rowHeight(drawing, columns, row, REGULAR);
    if (pdf.y + height > drawing.bottom) {
      pdf.addPage();
      artifact(drawing, () => drawCells(drawing, columns, titles, BOLD, pdf.y));
      pdf.y += rowHeight(drawing, columns, titles, BOLD);
    }
    addRow(drawing, table, columns, row, 'TD');
  }
  table.end();
  pdf.x = left;
  pdf.y += 10;
}

/** How high a table is, captions and rules included, where no page ends in it; in points. */
export function tableHeight(drawing: Drawing, block: Table): number {
  const { pdf, width } = drawing;
  const columns = columnsOf(drawing, block);
  const caption = pdf.font(REGULAR).fontSize(SIZE).heightOfString(block.caption, { width });
  const rows = block.rows.reduce((sum, row) => sum + rowHeight(drawing, columns, row, REGULAR), 0);
  return caption + 3 + rowHeight(drawing, columns, block.columns.map((column) => column.title), BOLD) + rows + 10;
}

function columnsOf({ left, width }: Drawing, block: Table): readonly Column[] {
  const shares = block.columns.reduce((sum, column) => sum + column.share, 0);
  let at = left;
  return block.columns.map(({ share, align }) => {
    const column = { left: at, width: (width * share) / shares, align };
    at += column.width;
    return column;
  });
}

function rowHeight({ pdf }: Drawing, columns: readonly Column[], row: readonly string[], font: string): number {
  pdf.font(font).fontSize(SIZE);
  const heights = columns.map((column, at) => pdf.heightOfString(row[at] || ' ', { width: column.width - 2 * PADDING }));
  return Math.max(...heights) + 2 * PADDING;
}

function addRow(drawing: Drawing, table: PDFKit.PDFStructureElement, columns: readonly Column[], cells: readonly string[], tag: 'TH' | 'TD'): void {
  const { pdf, left, width } = drawing;
  const font = tag === 'TH' ? BOLD : REGULAR;
  const height = rowHeight(drawing, columns, cells, font);
  const top = pdf.y;
  artifact(drawing, () => {
    if (tag === 'TH') pdf.rect(left, top, width, height).fill(WARM);
    pdf.moveTo(left, top + height).lineTo(left + width, top + height).lineWidth(0.4).stroke(RULE);
  });
  const row = openTagged(drawing, table, 'TR');
  columns.forEach((column, at) => {
    addTagged(drawing, row, tag, tag === 'TH' ? { scope: 'Column' } : {}, () => drawCell(drawing, column, cells[at] ?? '', font, top));
  });
  row.end();
  pdf.y = top + height;
}

function drawCells(drawing: Drawing, columns: readonly Column[], cells: readonly string[], font: string, top: number): void {
  columns.forEach((column, at) => drawCell(drawing, column, cells[at] ?? '', font, top));
  drawing.pdf.y = top;
}

function drawCell({ pdf }: Drawing, column: Column, text: string, font: string, top: number): void {
  pdf.font(font).fontSize(SIZE).fillColor(INK);
  pdf.text(text, column.left + PADDING, top + PADDING, { width: column.width - 2 * PADDING, align: column.align });
}
