import Papa from 'papaparse';
import { ok, refuse, type Result } from '../../result/result.ts';
import type { Delimiter } from './import-choices.ts';

/** A row of a table; `line` is the line of the file at which it begins, 1 the first. */
export interface GridRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A table as text, in parts of one file. */
export interface GridText {
  /** Lines end with a line feed, whatever they ended with before. */
  readonly text: string;
  /** What a first line `sep=;` says, as some spreadsheets write it. */
  readonly delimiter: string | null;
}

const SEPARATOR_LINE = /^sep=(.)\n/i;

/** A file's text made ready to be cut: without a mark of byte order, line ends all alike. A NUL is refused, for no table holds one. */
export function gridText(text: string): Result<GridText> {
  const alike = text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n');
  const nul = alike.indexOf('\0');
  if (nul >= 0) return refuse('import-nul', { line: lineAt(alike, nul) });
  const delimiter = SEPARATOR_LINE.exec(alike)?.[1] ?? null;
  // The line stays as a blank one, so that lines are counted as they stand in the file.
  return ok({ text: delimiter === null ? alike : alike.slice('sep=;'.length), delimiter });
}

/**
 * Cuts a table into rows, blank ones left out; a quoted cell may hold line ends and delimiters. A quotation mark that does not
 * close makes the rest one cell, so the table is refused with the line where it opens.
 *
 * Source: RFC 4180 s2 (from memory), read by a public CSV reader.
 * @example readGrid('a,b\n"1,5",2\n', ',', 100) //=> rows at lines 1 and 2
 */
export function readGrid(text: string, delimiter: Delimiter, most: number): Result<readonly GridRow[]> {
  const rows: GridRow[] = [];
  let [line, from] = [1, 0];
  let broken: number | null = null;
  Papa.parse<string[]>(text, {
    delimiter,
    newline: '\n',
    step: ({ data, errors, meta }, parser) => {
      if (errors.some((one) => one.type === 'Quotes')) broken = line + lineEnds(data.slice(0, -1).join(''), 0, Infinity);
      else if (data.some((cell) => cell.trim() !== '')) rows.push({ line, cells: data });
      line += lineEnds(text, from, meta.cursor);
      from = meta.cursor;
      if (broken !== null || rows.length > most) parser.abort();
    },
  });
  return broken === null ? ok(rows) : refuse('import-quotes', { line: broken });
}

function lineAt(text: string, at: number): number {
  return 1 + lineEnds(text, 0, at);
}

function lineEnds(text: string, from: number, to: number): number {
  let ends = 0;
  for (let at = text.indexOf('\n', from); at >= 0 && at < to; at = text.indexOf('\n', at + 1)) ends += 1;
  return ends;
}
