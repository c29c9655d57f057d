import { say } from '../../result/words/say.ts';
import { numberFromText, type DecimalMark, type MarkShown } from '../../units/number-text.ts';
import type { ImportQuestion } from './import-view.ts';

/** A number of a table as written, and what its own shape shows. */
export interface WrittenNumber {
  readonly line: number;
  readonly column: 'reading' | 'cost';
  readonly text: string;
  readonly shown: MarkShown;
}

/** The decimal mark of a table, by what it is known, and what is to be asked. */
export interface FoundMark {
  readonly value: DecimalMark | null;
  readonly by: 'choice' | 'values' | 'none';
  readonly text: string;
  readonly question: ImportQuestion | null;
}

const EXAMPLES = 3;
const NAMED_LINES = 5;

/**
 * Finds the decimal mark of a table, for numbers that may be read both ways. Another number settles it where it makes them
 * thousands, or stands in the same column; numbers that speak for both marks settle nothing.
 *
 * Source: ours, no source.
 * @example findMark([{ line: 2, column: 'reading', text: '41,500', shown: 'either' }], null).question?.suggested //=> '.'
 */
export function findMark(numbers: readonly WrittenNumber[], chosen: DecimalMark | null): FoundMark {
  if (chosen !== null) return { value: chosen, by: 'choice', text: '', question: null };
  const telling = numbers.filter((one): one is WrittenNumber & { shown: DecimalMark } => one.shown === '.' || one.shown === ',');
  const open = numbers.filter(({ shown }) => shown === 'either');
  const marks = new Set(telling.map(({ shown }) => shown));
  const [first] = telling;
  const settled = first !== undefined && marks.size === 1 && open.every((one) => thousandsIn(one, first.shown) || telling.some(({ column }) => column === one.column));
  if (settled) return { value: first.shown, by: 'values', text: open.length === 0 ? '' : say({ key: 'import-mark-by', values: { line: first.line, value: first.text.slice(0, 40) } }), question: null };
  return { value: null, by: 'none', text: '', question: open.length === 0 ? null : ask(open) };
}

function thousandsIn({ text }: WrittenNumber, decimal: DecimalMark): boolean {
  return !text.includes(decimal);
}

function ask(open: readonly WrittenNumber[]): ImportQuestion {
  const [first] = open;
  const values = { count: open.length, line: first?.line ?? 0, value: first?.text.slice(0, 40) ?? '' };
  const asThousands = open.every((one) => thousandsIn(one, '.')) ? '.' : open.every((one) => thousandsIn(one, ',')) ? ',' : null;
  return {
    answer: 'decimalMark', code: 'import-ask-mark', subject: null,
    text: say({ key: 'import-ask-mark', values }),
    options: (['.', ','] as const).map((mark) => ({
      value: mark, text: say({ key: mark === '.' ? 'import-mark-point' : 'import-mark-comma', values: {} }),
      examples: open.slice(0, EXAMPLES).map(({ text }) => `${text.slice(0, 40)} = ${numberFromText(text, mark) ?? '?'}`),
    })),
    suggested: asThousands,
    why: asThousands === null ? null : say({ key: 'import-why-thousands', values: {} }),
    lines: open.slice(0, NAMED_LINES).map(({ line }) => line),
  };
}
