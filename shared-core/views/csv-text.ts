/** How a cell begins that a spreadsheet would take for a formula. */
const FORMULA = /^[=+\-@\t\r]/;

/**
 * A table as CSV: RFC 4180, every cell quoted, lines ended by CR LF. A cell that would be taken for a formula gets an apostrophe before it.
 *
 * Source: RFC 4180 s2 (from memory); OWASP on CSV injection (seen).
 * @example csvText([['a', 'b']]) //=> '"a","b"\r\n'
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: string): string {
  return `"${(FORMULA.test(cell) ? `'${cell}` : cell).replaceAll('"', '""')}"`;
}
