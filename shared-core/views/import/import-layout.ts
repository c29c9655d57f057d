import { meantDates } from '../../calendar/date-text.ts';
import type { LocalDate } from '../../calendar/local-date.ts';
import { ok, refuse, type Result } from '../../result/result.ts';
import { markShown } from '../../units/number-text.ts';
import { importColumns, type ImportChoices, type ImportColumn } from './import-choices.ts';
import type { GridRow } from './import-grid.ts';
import { columnOfHead, type KnownHead } from './import-heads.ts';
import { withoutUnit } from './import-cells.ts';

/** Where each thing stands in a table, and its rows. */
export interface ImportLayout {
  readonly heads: readonly string[] | null;
  readonly headedBy: 'choice' | 'values';
  readonly rows: readonly GridRow[];
  readonly width: number;
  /** The place of each column, 0 the first, and how it is known. */
  readonly at: ReadonlyMap<ImportColumn, { readonly index: number; readonly by: 'choice' | 'header' | 'values' }>;
  /** What the heads of the columns taken say beside. */
  readonly known: ReadonlyMap<ImportColumn, KnownHead>;
  /** Columns that look like dates, and like readings: to be asked about where none is settled. */
  readonly likeDates: readonly number[];
  readonly likeReadings: readonly number[];
}

const LOOKED_AT_ROWS = 200;
/** This share of a column's cells must look alike. */
const MOST_CELLS = 0.6;

/** Finds where each thing stands: as the person says, by the heads, and in a table without heads by what the cells look like. */
export function findLayout(rows: readonly GridRow[], choices: ImportChoices, today: LocalDate): Result<ImportLayout> {
  const first = rows[0];
  const headed = choices.hasHeader ?? (first !== undefined && looksLikeHead(first, rows, today));
  const body = headed ? rows.slice(1) : rows;
  const width = rows.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  const beyond = Object.values(choices.columns).find((number) => number !== null && number > width);
  if (beyond !== undefined) return refuse('import-no-column', { column: beyond, columns: width }, ['columns']);
  const heads = headed ? (first?.cells ?? []) : null;
  const like = looksOf(body, width, today);
  const at = new Map<ImportColumn, { index: number; by: 'choice' | 'header' | 'values' }>();
  const twice = takeChosen(at, choices);
  if (twice !== null) return refuse('import-column-twice', { column: twice }, ['columns']);
  const known = takeHeads(at, heads ?? [], choices);
  takeByValues(at, like, choices, heads !== null);
  return ok({ heads, headedBy: choices.hasHeader === null ? 'values' : 'choice', rows: body, width, at, known, ...like });
}

type Places = Map<ImportColumn, { index: number; by: 'choice' | 'header' | 'values' }>;

function takeChosen(at: Places, { columns }: ImportChoices): number | null {
  for (const column of importColumns) {
    const number = columns[column];
    if (number === null || number === undefined) continue;
    if (isTaken(at, number - 1)) return number;
    at.set(column, { index: number - 1, by: 'choice' });
  }
  return null;
}

/** The surest head of each kind; what the person has settled stays. */
function takeHeads(at: Places, heads: readonly string[], { columns }: ImportChoices): ReadonlyMap<ImportColumn, KnownHead> {
  const known = heads.map((head, index) => ({ head: columnOfHead(head), index })).filter((one): one is { head: KnownHead; index: number } => one.head !== null);
  for (const { head, index } of [...known].sort((a, b) => a.head.rank - b.head.rank || a.index - b.index)) {
    if (columns[head.column] !== undefined || at.has(head.column) || isTaken(at, index)) continue;
    at.set(head.column, { index, by: 'header' });
  }
  return new Map(known.flatMap(({ head, index }) => (at.get(head.column)?.index === index ? [[head.column, head] as const] : [])));
}

/** Only where one column alone can be meant. Under heads that are not known a reading is not guessed: it might be anything that counts. */
function takeByValues(at: Places, { likeDates, likeReadings }: Pick<ImportLayout, 'likeDates' | 'likeReadings'>, { columns }: ImportChoices, headed: boolean): void {
  const free = (likely: readonly number[]) => likely.filter((index) => !isTaken(at, index));
  const take = (column: ImportColumn, likely: readonly number[]) => {
    const [only] = likely;
    if (columns[column] === undefined && !at.has(column) && only !== undefined && likely.length === 1) at.set(column, { index: only, by: 'values' });
  };
  take('date', free(likeDates));
  if (!headed && !at.has('work')) take('reading', free(likeReadings));
}

function isTaken(at: Places, index: number): boolean {
  return [...at.values()].some((one) => one.index === index);
}

/** A known head in it, or no date where the rows below have dates. */
function looksLikeHead(first: GridRow, rows: readonly GridRow[], today: LocalDate): boolean {
  const hasDate = ({ cells }: GridRow) => cells.some((cell) => isDate(cell, today));
  if (hasDate(first)) return false;
  return first.cells.some((cell) => columnOfHead(cell) !== null) || rows.slice(1, LOOKED_AT_ROWS).some(hasDate);
}

function looksOf(rows: readonly GridRow[], width: number, today: LocalDate): { readonly likeDates: readonly number[]; readonly likeReadings: readonly number[] } {
  const sample = rows.slice(0, LOOKED_AT_ROWS);
  const like = (test: (cell: string) => boolean) =>
    Array.from({ length: width }, (_, index) => index).filter((index) => {
      const cells = sample.map(({ cells: all }) => all[index]?.trim() ?? '').filter((cell) => cell !== '');
      return cells.length > 0 && cells.filter(test).length / cells.length >= MOST_CELLS;
    });
  const likeDates = like((cell) => isDate(cell, today));
  return { likeDates, likeReadings: like((cell) => markShown(withoutUnit(cell).number) !== undefined).filter((index) => !likeDates.includes(index)) };
}

function isDate(cell: string, today: LocalDate): boolean {
  return Object.keys(meantDates(cell, today)).length > 0;
}
