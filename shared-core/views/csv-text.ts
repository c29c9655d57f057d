import Papa from 'papaparse';

/** How a cell begins that a spreadsheet would take for a formula; the wide forms of the signs as well. The rule of the package that writes sees none in a text of several lines. */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/;

/** A number as it is to stand in a table, with its digits: an amount may begin with a minus and is no formula. */
export interface Figure {
  readonly figure: string;
}

export type Cell = string | number | Figure;

/**
 * A table as CSV: RFC 4180, every cell quoted, lines ended by CR LF. A text that would be taken for a formula gets an apostrophe before it; a number never.
 *
 * Source: RFC 4180 s2 (from memory); OWASP on CSV injection (seen).
 * @example csvText([['a', '=b', { figure: '-3.40' }]]) //=> '"a","\'=b","-3.40"\r\n'
 */
export function csvText(rows: readonly (readonly Cell[])[]): string {
  return rows.length === 0 ? '' : `${Papa.unparse(rows.map((row) => row.map(harmless)), { quotes: true, newline: '\r\n' })}\r\n`;
}

function harmless(cell: Cell): string | number {
  if (typeof cell === 'string') return FORMULA.test(cell) ? `'${cell}` : cell;
  return typeof cell === 'number' ? cell : cell.figure;
}
