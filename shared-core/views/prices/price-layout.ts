import type { LocalDate } from '../../calendar/local-date.ts';
import { ok, refuse, type Result } from '../../result/result.ts';
import { MOST_COLUMNS, delimiters, type Delimiter } from '../import/import-choices.ts';
import { findDelimiter } from '../import/import-delimiter.ts';
import { gridText, readGrid, type GridRow } from '../import/import-grid.ts';
import { priceColumnOf, priceColumns, type PriceChoices, type PriceColumn } from './price-columns.ts';

/** The most rows of one price list. */
export const MOST_PRICES = 20_000;

/** A price list cut into rows, with which column holds what. */
export interface PriceLayout {
  readonly delimiter: Delimiter;
  readonly hasHeader: boolean;
  readonly head: readonly string[];
  readonly width: number;
  readonly rows: readonly GridRow[];
  /** By number, 1 the first; null: none. */
  readonly columns: Readonly<Record<PriceColumn, number | null>>;
}

/** Cuts a price list and finds its columns by their heads; one that is empty or too large is refused. */
export function cutPrices(text: string, choices: PriceChoices, today: LocalDate): Result<PriceLayout> {
  const whole = gridText(text);
  if (!whole.ok) return whole;
  if (whole.value.text.trim() === '') return refuse('import-empty');
  const told = delimiters.find((one) => one === whole.value.delimiter);
  const delimiter = choices.delimiter ?? told ?? findDelimiter(whole.value.text, today).value;
  const grid = readGrid(whole.value.text, delimiter, MOST_PRICES + 1);
  if (!grid.ok) return grid;
  const wide = grid.value.find(({ cells }) => cells.length > MOST_COLUMNS);
  if (wide !== undefined) return refuse('import-too-wide', { line: wide.line, most: MOST_COLUMNS });
  const first = grid.value[0]?.cells ?? [];
  const hasHeader = choices.hasHeader ?? first.some((cell) => priceColumnOf(cell) !== null);
  const rows = hasHeader ? grid.value.slice(1) : grid.value;
  if (rows.length === 0) return refuse('import-only-head');
  if (rows.length > MOST_PRICES) return refuse('import-too-long', { most: MOST_PRICES });
  const width = Math.max(...grid.value.map(({ cells }) => cells.length));
  const columns = columnsOf(hasHeader ? first : [], choices);
  const beyond = priceColumns.find((one) => (columns[one] ?? 0) > width);
  if (beyond !== undefined) return refuse('import-no-column', { column: columns[beyond], columns: width }, ['columns']);
  const twice = priceColumns.find((one, at) => columns[one] !== null && priceColumns.slice(0, at).some((other) => columns[other] === columns[one]));
  if (twice !== undefined) return refuse('import-column-twice', { column: columns[twice] }, ['columns']);
  return ok({ delimiter, hasHeader, head: hasHeader ? first : [], width, rows, columns });
}

/** What is chosen holds; the rest is found by the surest head that is still free. */
function columnsOf(head: readonly string[], { columns: chosen }: PriceChoices): PriceLayout['columns'] {
  const taken = new Set(Object.values(chosen));
  const known = head.map((cell, at) => ({ number: at + 1, known: priceColumnOf(cell) })).filter(({ number }) => !taken.has(number));
  const found = (column: PriceColumn) => known.filter((one) => one.known?.column === column).sort((a, b) => (a.known?.rank ?? 0) - (b.known?.rank ?? 0))[0]?.number ?? null;
  return Object.fromEntries(priceColumns.map((column) => [column, chosen[column] === undefined ? found(column) : chosen[column]])) as PriceLayout['columns'];
}
