import type { RequestOf } from '../../shared-core/contract/contract.ts';
import { delimiters, importColumns, MOST_COLUMNS, type ImportColumn } from '../../shared-core/views/import/import-choices.ts';
import { DATE_ORDERS } from '../../shared-core/calendar/date-text.ts';
import type { CommandInput } from './command.ts';

type Choices = Omit<RequestOf<'import.preview'>, 'base64' | 'text' | 'name'>;

/** What was wrong with an option. */
export interface WrongOption {
  readonly why: string;
}

/** The options that say how a table is to be read. */
export const choiceOptions = {
  'car': { type: 'string' },
  'columns': { type: 'string' },
  'date-order': { type: 'string' },
  'unit': { type: 'string' },
  'decimal-mark': { type: 'string' },
  'delimiter': { type: 'string' },
  'header': { type: 'boolean' },
  'no-header': { type: 'boolean' },
  'items': { type: 'string' },
} as const;

/** The choices that options come to, or what is wrong with one. @example choicesOf({ 'date-order': 'dmy' }) //=> { dateOrder: 'dmy', ... } */
export function choicesOf(options: CommandInput['options']): Choices | WrongOption {
  const text = (name: string) => (typeof options[name] === 'string' ? options[name] : undefined);
  const columns = columnsOf(text('columns') ?? '');
  if ('why' in columns) return columns;
  const items = itemsOf(text('items') ?? '');
  if ('why' in items) return items;
  const order = oneOf('date-order', text('date-order'), DATE_ORDERS);
  const unit = oneOf('unit', text('unit'), ['km', 'mi']);
  const mark = oneOf('decimal-mark', text('decimal-mark'), ['.', ',']);
  const delimiter = oneOf('delimiter', /^(tab|\\t)$/i.test(text('delimiter') ?? '') ? '\t' : text('delimiter'), delimiters);
  const wrong = [order, unit, mark, delimiter].find((one) => 'why' in one);
  if (wrong !== undefined && 'why' in wrong) return wrong;
  if (options['header'] === true && options['no-header'] === true) return { why: "Options '--header' and '--no-header' exclude each other." };
  const chosen = <Value>(one: WrongOption | { readonly value: Value | null }) => ('why' in one ? null : one.value);
  return {
    car: text('car') ?? null, columns: columns.at, items: items.items,
    dateOrder: chosen(order), unit: chosen(unit), decimalMark: chosen(mark), delimiter: chosen(delimiter),
    hasHeader: options['header'] === true ? true : options['no-header'] === true ? false : null,
  };
}

function oneOf<Value extends string>(name: string, given: string | undefined, values: readonly Value[]): WrongOption | { readonly value: Value | null } {
  if (given === undefined) return { value: null };
  const value = values.find((one) => one === given);
  return value === undefined ? { why: `Option '--${name}' takes ${values.map((one) => (one === '\t' ? 'tab' : one)).join(' or ')}.` } : { value };
}

/** `date=1,reading=3,note=none` */
function columnsOf(given: string): WrongOption | { readonly at: Partial<Record<ImportColumn, number | null>> } {
  const at: Partial<Record<ImportColumn, number | null>> = {};
  for (const part of given.split(',').filter((one) => one.trim() !== '')) {
    const [name = '', value = ''] = part.trim().split('=');
    const column = importColumns.find((one) => one === name);
    const number = value === 'none' ? null : /^[1-9]\d{0,2}$/.test(value) && Number(value) <= MOST_COLUMNS ? Number(value) : undefined;
    if (column === undefined || number === undefined) return { why: `Option '--columns' takes pairs as date=1,reading=3 or note=none, of ${importColumns.join(', ')}; not "${part.trim()}".` };
    at[column] = number;
  }
  return { at };
}

/** `oil change=engine-oil;wash=` */
function itemsOf(given: string): WrongOption | { readonly items: { text: string; item: string | null }[] } {
  const items: { text: string; item: string | null }[] = [];
  for (const part of given.split(';').filter((one) => one.trim() !== '')) {
    const at = part.lastIndexOf('=');
    if (at <= 0) return { why: `Option '--items' takes pairs as "oil change=ITEM;wash=", not "${part.trim()}".` };
    items.push({ text: part.slice(0, at).trim(), item: part.slice(at + 1).trim() === '' ? null : part.slice(at + 1).trim() });
  }
  return { items };
}
