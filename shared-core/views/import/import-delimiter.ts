import type { LocalDate } from '../../calendar/local-date.ts';
import { meantDates } from '../../calendar/date-text.ts';
import { delimiters, type Delimiter } from './import-choices.ts';
import { columnOfHead } from './import-heads.ts';
import { rowsBy } from './rows-by.ts';
import { readGrid, type GridRow } from './import-grid.ts';

const LOOKED_AT_ROWS = 60;
const LOOKED_AT_CHARACTERS = 60_000;

/** The delimiter that fits a table best, and the others that cut it into columns too. */
export interface FoundDelimiter {
  readonly value: Delimiter;
  readonly others: readonly Delimiter[];
}

/**
 * Finds what parts the columns, by the first rows: that in which most rows have as many columns as the most usual, and in which
 * heads are known and cells are dates.
 *
 * Source: ours, no source.
 * @example findDelimiter('date;km\n2026-01-05;41,5\n', today) //=> { value: ';', others: [] }
 */
export function findDelimiter(text: string, today: LocalDate): FoundDelimiter {
  const sample = text.slice(0, LOOKED_AT_CHARACTERS);
  const scored = delimiters.map((value) => ({ value, score: scoreOf(rowsOf(sample, value), today) })).filter(({ score }) => score > 0);
  const [best, ...others] = scored.sort((a, b) => b.score - a.score);
  return { value: best?.value ?? ',', others: others.map(({ value }) => value) };
}

function rowsOf(sample: string, delimiter: Delimiter): readonly GridRow[] {
  const rows = readGrid(sample, delimiter, LOOKED_AT_ROWS);
  return rows.ok ? rows.value.slice(0, LOOKED_AT_ROWS) : [];
}

/** 0 where it cuts nothing. An even cut counts 1; each known head and each column of dates 1 more. */
function scoreOf(rows: readonly GridRow[], today: LocalDate): number {
  const widths = rowsBy(rows, ({ cells }) => cells.length);
  const [usual, same] = [...widths].sort(([, a], [, b]) => b.length - a.length)[0] ?? [1, []];
  if (usual < 2) return 0;
  const heads = new Set((rows[0]?.cells ?? []).flatMap((cell) => columnOfHead(cell)?.column ?? []));
  const dates = rows.filter(({ cells }) => cells.some((cell) => Object.keys(meantDates(cell, today)).length > 0));
  return same.length / rows.length + heads.size + dates.length / rows.length;
}
