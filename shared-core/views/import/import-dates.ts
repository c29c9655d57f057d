import { DATE_ORDERS, isCertain, meantDates, type DateOrder, type MeantDates } from '../../calendar/date-text.ts';
import type { LocalDate } from '../../calendar/local-date.ts';
import { say, sayDate } from '../../result/words/say.ts';
import type { ImportQuestion } from './import-view.ts';

/** The date of a row as written, and its reading where that is a plain number. */
export interface WrittenDate {
  readonly line: number;
  readonly text: string;
  readonly value: number | null;
}

/** The order of a table's dates, by what it is known, and what is to be asked. */
export interface FoundOrder {
  readonly value: DateOrder | null;
  readonly by: 'choice' | 'values' | 'none';
  readonly text: string;
  readonly others: readonly DateOrder[];
  readonly question: ImportQuestion | null;
}

/** What the order is looked for with. */
export interface OrderInput {
  readonly dates: readonly WrittenDate[];
  readonly today: LocalDate;
  readonly chosen: DateOrder | null;
  /** How dates are written where the household lives; it may suggest, and never decides. */
  readonly locale: string;
}

interface Dated extends WrittenDate {
  readonly meant: MeantDates;
}

const EXAMPLES = 3;
const NAMED_LINES = 5;

/**
 * Finds the order of a table's dates: the one in which all of them are dates. Where several orders fit and give other dates, and
 * where none fits all, it is asked; order of rows, readings and today suggest an answer, and never give it.
 *
 * Source: ours, no source.
 * @example findDateOrder({ dates: [{ line: 2, text: '25/3/2024', value: null }], today, chosen: null, locale: 'en-GB' }).value //=> 'dmy'
 */
export function findDateOrder(input: OrderInput): FoundOrder {
  const dated = input.dates.map((one): Dated => ({ ...one, meant: meantDates(one.text, input.today) })).filter(({ meant }) => Object.keys(meant).length > 0);
  const open = dated.filter(({ meant }) => !isCertain(meant));
  const possible = DATE_ORDERS.filter((order) => open.some(({ meant }) => meant[order] !== undefined));
  const others = (value: DateOrder) => possible.filter((order) => order !== value);
  if (input.chosen !== null) return { value: input.chosen, by: 'choice', text: '', others: others(input.chosen), question: null };
  if (open.length === 0) return { value: dated.length > 0 && dated.every(({ text }) => /^\d{4}/.test(text)) ? 'ymd' : null, by: dated.length > 0 ? 'values' : 'none', text: '', others: [], question: null };
  const fitting = distinct(possible.filter((order) => open.every(({ meant }) => meant[order] !== undefined)), open);
  const [only] = fitting;
  if (only !== undefined && fitting.length === 1) return { value: only, by: 'values', text: evidenceFor(only, open), others: others(only), question: null };
  return { value: null, by: 'none', text: '', others: possible, question: ask(input, dated, open, fitting.length === 0 ? possible : fitting, fitting.length === 0) };
}

/** Orders that give the same dates throughout are one. */
function distinct(orders: readonly DateOrder[], open: readonly Dated[]): readonly DateOrder[] {
  return orders.filter((order, at) => !orders.slice(0, at).some((earlier) => open.every(({ meant }) => meant[order] === meant[earlier])));
}

/** The first line that is a date in this order and in no other. */
function evidenceFor(order: DateOrder, open: readonly Dated[]): string {
  const line = open.find(({ meant }) => DATE_ORDERS.every((other) => other === order || meant[other] === undefined));
  return line === undefined ? '' : say({ key: 'import-order-by', values: { line: line.line, value: line.text.slice(0, 40) } });
}

function ask(input: OrderInput, dated: readonly Dated[], open: readonly Dated[], orders: readonly DateOrder[], mixed: boolean): ImportQuestion {
  const code = mixed ? 'import-ask-order-mixed' : 'import-ask-order';
  const suggestion = suggest(input, dated, orders);
  const telling = open.filter(({ meant }) => new Set(orders.map((order) => meant[order])).size > 1);
  return {
    answer: 'dateOrder', code, subject: null,
    text: say({ key: code, values: { count: open.length, line: telling[0]?.line ?? 0, value: telling[0]?.text.slice(0, 40) ?? '' } }),
    options: orders.map((order) => ({ value: order, text: say({ key: `import-order-${order}`, values: {} }), examples: examplesIn(order, telling) })),
    suggested: suggestion?.order ?? null,
    why: suggestion === null ? null : say({ key: suggestion.why, values: {} }),
    lines: telling.slice(0, NAMED_LINES).map(({ line }) => line),
  };
}

function examplesIn(order: DateOrder, dated: readonly Dated[]): string[] {
  return dated.slice(0, EXAMPLES).map(({ text, meant }) => `${text.slice(0, 40)} = ${meant[order] === undefined ? '?' : sayDate(meant[order])}`);
}

/** The order with fewest dates ahead, none in it, and least disorder; else the way of writing where the household lives. */
function suggest({ today, locale }: OrderInput, dated: readonly Dated[], orders: readonly DateOrder[]): { readonly order: DateOrder; readonly why: string } | null {
  const faults = orders.map((order) => ({ order, faults: faultsIn(order, dated, today) })).sort((a, b) => a.faults - b.faults);
  const [best, next] = faults;
  if (best === undefined) return null;
  if (next === undefined || best.faults < next.faults) return { order: best.order, why: 'import-why-order' };
  const local = locale === 'en-US' ? 'mdy' : 'dmy';
  return faults.some((one) => one.order === local && one.faults === best.faults) ? { order: local, why: 'import-why-locale' } : null;
}

function faultsIn(order: DateOrder, dated: readonly Dated[], today: LocalDate): number {
  const days = dated.map(({ meant }) => meant[order]);
  const known = dated.flatMap(({ meant, value }) => (meant[order] === undefined ? [] : [{ date: meant[order], value }]));
  const ahead = known.filter(({ date }) => date > today).length;
  const falls = known.filter(({ date }, at) => date < (known[at - 1]?.date ?? date)).length;
  const rises = known.filter(({ date }, at) => date > (known[at - 1]?.date ?? date)).length;
  const read = known.filter((one): one is { date: LocalDate; value: number } => one.value !== null).sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.value - b.value));
  const backwards = read.filter(({ value }, at) => value < (read[at - 1]?.value ?? value)).length;
  return days.length - known.length + ahead + Math.min(falls, rises) + backwards;
}
