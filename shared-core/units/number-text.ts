/** The mark between whole units and parts of one. */
export type DecimalMark = '.' | ',';

/** What the marks of one number say: which is the decimal one; `either` where a reader cannot know; null where it has none. */
export type MarkShown = DecimalMark | 'either' | null;

const SIGN_AND_BODY = /^([+\-\u2212]?)\s*(\d(?:[\d\s.,'\u2019]*\d)?[.,]?)$/;
/** Groups of three parted by blanks of any width or by an apostrophe. */
const BLANK_GROUPS = /^\d{1,3}(?:[\s'\u2019]\d{3})+(?![\d\s'\u2019])/;
const LONGEST_TEXT = 40;

/** A number as it is written: its sign, and its digits with points and commas only. */
interface WrittenNumber {
  readonly negative: boolean;
  readonly body: string;
}

/**
 * Which mark of a number as written is the decimal one, by its own shape. One mark with exactly three digits after it, and at
 * most three before, is thousands in one country and decimals in another. Undefined where the text is no number.
 *
 * Source: the marks in use, ISO 80000-1 on blanks between groups (from memory); common practice.
 * @example markShown('1.041,5') //=> ','
 * @example markShown('41,500') //=> 'either'
 */
export function markShown(text: string): MarkShown | undefined {
  const written = writtenNumber(text);
  return written === null ? undefined : markOf(written);
}

/**
 * The number a text means, digits with a point: by its own shape or, where that leaves it open, by the decimal mark given.
 * Null where it is no number, or where it is open and no mark is given.
 *
 * @example numberFromText('41,500', '.') //=> '41500'
 * @example numberFromText('1 041.5', null) //=> '1041.5'
 */
export function numberFromText(text: string, decimal: DecimalMark | null): string | null {
  const written = writtenNumber(text);
  if (written === null) return null;
  const shown = markOf(written);
  if (shown === 'either' && decimal === null) return null;
  const mark = shown === '.' || shown === ',' ? shown : (decimal ?? '.');
  const [whole = '', parts = ''] = written.body.replaceAll(mark === '.' ? ',' : '.', '').split(mark);
  return `${written.negative ? '-' : ''}${whole}${parts === '' ? '' : `.${parts}`}`;
}

function writtenNumber(text: string): WrittenNumber | null {
  const found = text.length > LONGEST_TEXT ? null : SIGN_AND_BODY.exec(text.trim());
  if (found === null) return null;
  const negative = found[1] === '-' || found[1] === '\u2212';
  const body = found[2] ?? '';
  if (!/[\s'\u2019]/.test(body)) return wellMarked(body) ? { negative, body } : null;
  const bare = BLANK_GROUPS.test(body) ? body.replace(BLANK_GROUPS, (groups) => groups.replace(/\D/g, '')) : '';
  return /^\d+(?:[.,]\d*)?$/.test(bare) ? { negative, body: bare } : null;
}

/** At most one decimal mark, and groups of three where the other mark parts thousands. */
function wellMarked(body: string): boolean {
  return /^\d+(?:[.,]\d*)?$/.test(body) || /^\d{1,3}(?:,\d{3})+(?:\.\d*)?$/.test(body) || /^\d{1,3}(?:\.\d{3})+(?:,\d*)?$/.test(body);
}

function markOf({ body }: WrittenNumber): MarkShown {
  const marks = body.replace(/\d/g, '');
  const last = marks.at(-1);
  if (last === undefined) return null;
  const other = last === '.' ? ',' : '.';
  if (marks.length > 1) return marks.includes(other) ? asMark(last) : other;
  const [before = '', after = ''] = body.split(last);
  return after.length === 3 && before.length <= 3 && !before.startsWith('0') ? 'either' : asMark(last);
}

function asMark(character: string): DecimalMark {
  return character === ',' ? ',' : '.';
}
