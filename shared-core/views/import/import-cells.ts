import { ok, refuse, type Refusal, type Result } from '../../result/result.ts';
import type { DistanceUnit } from '../../units/distance.ts';
import { unitOfWord } from './import-heads.ts';

/** A text of a table made fit to be kept, and what was made clean in it. */
export interface CleanText {
  readonly text: string;
  readonly cleaned: readonly Refusal[];
}

const LONGEST_CELL = 5000;
/** What a spreadsheet takes for a formula. Source: OWASP on CSV injection (seen). */
const FORMULA = /^[=@\t\r]|^[+-](?!\s|[\d.,\s]*$)/;
/** How programs that write tables keep a text from being a formula. */
const ESCAPED = /^'(?=[=+\-@\t\r])/;

/**
 * The text of a cell. An apostrophe that guards a text from being a formula is taken off; a formula is refused, for its value is
 * not in the table; a cell longer than 5000 characters too.
 *
 * @example cleanCell('=HYPERLINK("x")', 4) //=> refused 'import-formula'
 * @example cleanCell("'-new pads", 4) //=> { ok: true, value: { text: '-new pads', cleaned: [...] } }
 */
export function cleanCell(cell: string, column: number): Result<CleanText> {
  if (cell.length > LONGEST_CELL) return refuse('import-cell-long', { column, most: LONGEST_CELL });
  if (ESCAPED.test(cell)) return ok({ text: cell.slice(1).trim(), cleaned: [refuse('import-guarded', { column }).refusal] });
  if (FORMULA.test(cell)) return refuse('import-formula', { column, value: cell.trim().slice(0, 40) });
  return ok({ text: cell.trim(), cleaned: [] });
}

/** A cell that holds a date, a number or a word: no formula. */
export function bareCell(cell: string, column: number): Result<string> {
  const text = cell.trim();
  return /^[=@]/.test(text) ? refuse('import-formula', { column, value: text.slice(0, 40) }) : ok(text);
}

/** A text on one line: what stood on several is joined, which is said. */
export function onOneLine({ text, cleaned }: CleanText, column: number): CleanText {
  return /[\n\t]/.test(text) ? { text: text.replace(/\s*[\n\t]\s*/g, ' '), cleaned: [...cleaned, refuse('import-joined', { column }).refusal] } : { text, cleaned };
}

/** A number and the unit that stands behind it; null where none does. @example withoutUnit('41 500 km') //=> { number: '41 500', unit: 'km' } */
export function withoutUnit(cell: string): { readonly number: string; readonly unit: DistanceUnit | null } {
  const [, number = '', word = ''] = /^(.*[\d.,])\s*([a-z]+\.?)$/i.exec(cell.trim()) ?? [];
  const unit = unitOfWord(word);
  return unit === null ? { number: cell.trim(), unit: null } : { number: number.trim(), unit };
}

const LONGEST_NAME = 120;

/** A name cut between words to 120 characters, with a sign that more was there. @example cutName('short') //=> 'short' */
export function cutName(text: string): string {
  if (text.length <= LONGEST_NAME) return text;
  const cut = text.slice(0, LONGEST_NAME - 2).replace(/[\ud800-\udbff]$/, '');
  const end = cut.lastIndexOf(' ');
  return `${(end > LONGEST_NAME / 2 ? cut.slice(0, end) : cut).trimEnd()} …`;
}
