import Papa from 'papaparse';
import type { OrderSheet } from '../../shared-core/views/order-sheets.ts';

/** How a formula begins. */
const FORMULA = /^[=+\-@\t\r]/;

/**
 * The sheets of orders as one table: RFC 4180, every cell quoted. A text that a spreadsheet would take for a formula is made harmless by an
 * apostrophe before it.
 *
 * Source: RFC 4180 s2 (from memory); OWASP on CSV injection (seen).
 */
export function orderCsv(sheets: readonly OrderSheet[]): string {
  const head = sheets[0]?.table.head ?? [];
  const rows = sheets.flatMap((sheet) => sheet.table.rows);
  return head.length === 0 ? '' : `${Papa.unparse([[...head], ...rows], { quotes: true, escapeFormulae: FORMULA, newline: '\r\n' })}\r\n`;
}
