import Papa from 'papaparse';

/** How a cell begins that a spreadsheet would take for a formula. The rule of the package that writes sees none in a text of several lines. */
const FORMULA = /^[=+\-@\t\r]/;

/**
 * A table as CSV: RFC 4180, every cell quoted, lines ended by CR LF. A cell that would be taken for a formula gets an apostrophe before it.
 *
 * Source: RFC 4180 s2 (from memory); OWASP on CSV injection (seen).
 * @example csvText([['a', 'b']]) //=> '"a","b"\r\n'
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return rows.length === 0 ? '' : `${Papa.unparse(rows.map((row) => [...row]), { quotes: true, escapeFormulae: FORMULA, newline: '\r\n' })}\r\n`;
}
