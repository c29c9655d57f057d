import type { LocalDate } from '../../calendar/local-date.ts';
import { ok, refuse, type Result } from '../../result/result.ts';
import { delimiters, MOST_COLUMNS, type Delimiter, type ImportChoices } from './import-choices.ts';
import { findDelimiter, type FoundDelimiter } from './import-delimiter.ts';
import { gridText, readGrid } from './import-grid.ts';
import { findLayout, type ImportLayout } from './import-layout.ts';

/** The most rows of one table, its head not counted. */
export const MOST_IMPORTED_ROWS = 20_000;

/** A table cut into rows and columns, and by what. */
export interface CutTable {
  readonly layout: ImportLayout;
  readonly delimiter: FoundDelimiter & { readonly by: 'choice' | 'table' | 'values' };
}

/** Cuts a table; one that is empty, has a head only, or is too large is refused. @example cutTable('date,km\n2026-01-05,1\n', choices, today) */
export function cutTable(text: string, choices: ImportChoices, today: LocalDate): Result<CutTable> {
  const whole = gridText(text);
  if (!whole.ok) return whole;
  if (whole.value.text.trim() === '') return refuse('import-empty');
  const delimiter = delimiterOf(whole.value.text, whole.value.delimiter, choices, today);
  const grid = readGrid(whole.value.text, delimiter.value, MOST_IMPORTED_ROWS + 1);
  if (!grid.ok) return grid;
  const wide = grid.value.find(({ cells }) => cells.length > MOST_COLUMNS);
  if (wide !== undefined) return refuse('import-too-wide', { line: wide.line, most: MOST_COLUMNS });
  const layout = findLayout(grid.value, choices, today);
  if (!layout.ok) return layout;
  if (layout.value.rows.length === 0) return refuse('import-only-head');
  if (layout.value.rows.length > MOST_IMPORTED_ROWS) return refuse('import-too-long', { most: MOST_IMPORTED_ROWS });
  return ok({ layout: layout.value, delimiter });
}

function delimiterOf(text: string, told: string | null, choices: ImportChoices, today: LocalDate): CutTable['delimiter'] {
  const found = findDelimiter(text, today);
  const others = (value: Delimiter) => [found.value, ...found.others].filter((one) => one !== value);
  if (choices.delimiter !== null) return { value: choices.delimiter, others: others(choices.delimiter), by: 'choice' };
  const known = delimiters.find((one) => one === told);
  return known === undefined ? { ...found, by: 'values' } : { value: known, others: others(known), by: 'table' };
}
