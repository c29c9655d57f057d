import { basename } from 'node:path';
import { DATE_ORDERS } from '../../../shared-core/calendar/date-text.ts';
import { sayDate } from '../../../shared-core/result/words/say.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import { priceColumns, type PriceColumn } from '../../../shared-core/views/prices/price-columns.ts';
import type { PriceRow, PriceView } from '../../../shared-core/views/prices/price-view.ts';
import { done, refused, wrongUse, type Command, type CommandInput } from '../command.ts';
import { readBytes } from '../read-input.ts';

/** Takes in a supplier's price list: shown first, stored with --keep. */
export const pricesCommand: Command = {
  name: 'prices',
  does: 'previews a price list; --keep stores its prices',
  usage: [
    'prices FILE.csv [--supplier ID] [--columns number=1,price=4] [--date-order dmy] [--keep]',
    '',
    '--supplier      whose prices they are, where the rows do not say',
    `--columns       which column holds what, by number or none: ${priceColumns.join(', ')}`,
    '--date-order    ymd, dmy or mdy',
    '--decimal-mark  . or , in prices that can be read both ways',
    '--keep          stores what the preview shows; refused while a question is open',
    'FILE may be - for standard input.',
  ],
  options: { 'supplier': { type: 'string' }, 'columns': { type: 'string' }, 'date-order': { type: 'string' }, 'decimal-mark': { type: 'string' }, 'keep': { type: 'boolean' } },
  run: async (input) => {
    const [file] = input.words;
    if (file === undefined || input.words.length !== 1) return wrongUse('prices takes one file.');
    const choices = choicesOf(input.options);
    if (typeof choices === 'string') return wrongUse(choices);
    const bytes = readBytes(file);
    if (!bytes.ok) return refused(bytes.refusal);
    const request = { ...choices, base64: bytes.value.toString('base64'), name: file === '-' ? null : basename(file) };
    const host = await input.host();
    if (input.options['keep'] !== true) {
      const reply = await host.call('prices.preview', request);
      return reply.ok ? done(reply.value, pricesText(reply.value)) : refused(reply.refusal);
    }
    const reply = await host.call('prices.keep', request);
    return reply.ok ? done(reply.value, `${pricesText(reply.value)}\nStored: ${reply.value.stored}.`) : refused(reply.refusal);
  },
};

function choicesOf(options: CommandInput['options']) {
  const text = (name: string) => (typeof options[name] === 'string' ? options[name] : null);
  const order = text('date-order');
  const dateOrder = order === null ? null : (DATE_ORDERS.find((one) => one === order) ?? undefined);
  if (dateOrder === undefined) return '--date-order is ymd, dmy or mdy.';
  const mark = text('decimal-mark');
  const decimalMark: '.' | ',' | null = mark === '.' || mark === ',' ? mark : null;
  if (mark !== decimalMark) return '--decimal-mark is . or ,';
  const columns: Partial<Record<PriceColumn, number | null>> = {};
  for (const one of (text('columns') ?? '').split(',').filter((part) => part !== '')) {
    const [name, value = ''] = one.split('=');
    const column = priceColumns.find((known) => known === name?.trim());
    if (column === undefined || !/^([1-9]\d{0,2}|none)$/.test(value)) return `--columns takes NAME=NUMBER or NAME=none, of ${priceColumns.join(', ')}.`;
    columns[column] = value === 'none' ? null : Number(value);
  }
  return { supplier: text('supplier'), dateOrder, decimalMark, columns };
}

const SAID = { 'new-offer': 'new offer', 'new-price': 'new price', 'seen-again': 'seen again', 'known': 'known', 'no-part': 'no part', 'refused': 'REFUSED' } as const;

function pricesText(view: PriceView): string {
  const row = (one: PriceRow) => `  line ${one.line}: ${SAID[one.outcome]}: ${one.partName === null || one.priceMinor === null ? one.written : `${one.partName}, ${one.quantity} ${one.unit ?? ''} from ${one.supplierName} ${amountText(one.priceMinor, view.currency)}${one.beforeMinor === null || one.beforeMinor === one.priceMinor ? '' : `, before ${amountText(one.beforeMinor, view.currency)}`}${one.seenOn === null ? '' : `, seen ${sayDate(one.seenOn)}`}`}${one.said === null ? '' : `. ${one.said.text}`}`;
  return [
    ...view.questions.map((one) => `Open: ${one.text}${one.options.map((option) => `\n  ${option.value}: ${option.text}`).join('')}`),
    Object.entries(view.counts).filter(([, count]) => count > 0).map(([outcome, count]) => `${SAID[outcome as PriceRow['outcome']]}: ${count}`).join(', '),
    ...view.rows.map(row),
  ].filter((line) => line !== '').join('\n');
}
