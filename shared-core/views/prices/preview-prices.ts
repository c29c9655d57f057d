import { findHousehold } from '../../fleet/find-car.ts';
import { hexText } from '../../journal/hex-text.ts';
import { utf8Bytes } from '../../journal/utf8-text.ts';
import type { NewEntry } from '../../journal/entry-kind.ts';
import type { Facts } from '../../journal/facts.ts';
import type { Moment } from '../../journal/operation.ts';
import { suppliers } from '../../parts/supplier.ts';
import { ok, refuse, type Result } from '../../result/result.ts';
import { say } from '../../result/words/say.ts';
import { findDateOrder, type FoundOrder } from '../import/import-dates.ts';
import { decidePrices } from './decide-prices.ts';
import type { PriceChoices } from './price-columns.ts';
import { cutPrices, type PriceLayout } from './price-layout.ts';
import { priceOutcomeSchema, type PriceQuestion, type PriceView } from './price-view.ts';

/** What a price list comes to, and the entries that would be stored. */
export interface DecidedPrices {
  readonly view: PriceView;
  readonly entries: readonly NewEntry[];
}

interface PriceFile {
  readonly name: string | null;
  readonly digest: string;
}

const FIRST_CELLS = 3;

/** Reads a price list and decides every row; where something is open nothing is decided, and it is asked. */
export function previewPrices(facts: Facts, text: string, choices: PriceChoices, file: PriceFile, moment: Moment, sha256: (bytes: Uint8Array) => Uint8Array): Result<DecidedPrices> {
  const household = findHousehold(facts);
  if (!household.ok) return household;
  if (choices.supplier !== null && facts.get(suppliers, choices.supplier) === null) return refuse('unknown-supplier', { id: choices.supplier }, ['supplier']);
  if (choices.seenOn !== null && choices.seenOn > moment.today) return refuse('date-in-future', { date: choices.seenOn }, ['seenOn']);
  const layout = cutPrices(text, choices, moment.today);
  if (!layout.ok) return layout;
  const order = orderOf(layout.value, choices, moment, household.value.locale);
  const questions = questionsOf(facts, layout.value, choices, order);
  const open = questions.length > 0;
  const { currency } = household.value;
  const { rows, entries } = open ? { rows: [], entries: [] } : decidePrices({ facts, moment, currency, choices, layout: layout.value, dateOrder: order.value });
  const { delimiter, hasHeader, columns } = layout.value;
  const counts = Object.fromEntries(priceOutcomeSchema.options.map((outcome) => [outcome, rows.filter((row) => row.outcome === outcome).length])) as PriceView['counts'];
  const outcome = hexText(sha256(utf8Bytes(JSON.stringify(rows))));
  return ok({ entries, view: { file: file.name, digest: file.digest, outcome, ready: entries.length > 0, currency, delimiter, hasHeader, dateOrder: order.value, heads: headsOf(layout.value), columns: { ...columns }, questions, rows: [...rows], counts } });
}

function headsOf({ head, width, rows }: PriceLayout): PriceView['heads'] {
  return Array.from({ length: width }, (_, at) => ({ column: at + 1, head: head[at]?.slice(0, 60) ?? null, first: rows.slice(0, FIRST_CELLS).map(({ cells }) => (cells[at] ?? '').slice(0, 40)) }));
}

function orderOf({ columns, rows }: PriceLayout, { dateOrder: chosen }: PriceChoices, { today }: Moment, locale: string): FoundOrder {
  const at = columns.date;
  const dates = at === null ? [] : rows.flatMap(({ line, cells }) => ((cells[at - 1] ?? '').trim() === '' ? [] : [{ line, text: (cells[at - 1] ?? '').trim(), value: null }]));
  return findDateOrder({ dates, today, chosen, locale });
}

function questionsOf(facts: Facts, { columns, rows }: PriceLayout, choices: PriceChoices, order: FoundOrder): PriceQuestion[] {
  const ask = (answer: PriceQuestion['answer'], key: string, options: PriceQuestion['options'] = []) => ({ answer, text: say({ key, values: {} }), options });
  const at = columns.supplier;
  const nameless = at === null || rows.some(({ cells }) => (cells[at - 1] ?? '').trim() === '');
  return [
    ...(columns.price === null ? [ask('columns', 'price-ask-price')] : []),
    ...(columns.number === null && columns.name === null ? [ask('columns', 'price-ask-part')] : []),
    ...(nameless && choices.supplier === null ? [ask('supplier', 'price-ask-supplier', facts.all(suppliers).map(({ id, name }) => ({ value: id, text: name })))] : []),
    ...(order.question === null ? [] : [{ answer: 'dateOrder' as const, text: order.question.text, options: order.question.options.map(({ value, text, examples }) => ({ value, text: [text, ...examples].join(' ') })) }]),
  ];
}
