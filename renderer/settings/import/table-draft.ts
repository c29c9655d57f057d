import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import type { ImportQuestion, ImportView } from '../../../shared-core/views/import/import-view.ts';

/** What a person says of a table; what is null, or left out, is looked for in the table itself. */
export type TableChoices = { readonly [Name in keyof Sayable]-?: Exclude<Sayable[Name], undefined> };
type Sayable = Omit<RequestOf<'import.preview'>, 'base64' | 'text' | 'name'>;

/** What a column may hold. */
export type Holding = NonNullable<ImportView['columns'][number]['holds']>;
/** One text in the column of work. */
export type WorkText = ImportView['items'][number];

/** A table that was chosen, dropped or pasted: its bytes or its text. */
export interface ChosenTable {
  /** Tells one choosing from the next, even of the same file. */
  readonly key: number;
  readonly name: string | null;
  readonly bytes: number;
  readonly base64: string | null;
  readonly text: string | null;
}

/** A table and what was said of it so far. */
export interface TableDraft {
  readonly table: ChosenTable;
  readonly choices: TableChoices;
}

/** Nothing said yet, but perhaps the car whose file one came from. */
export function startChoices(car: string | null): TableChoices {
  return { car, columns: {}, dateOrder: null, unit: null, decimalMark: null, delimiter: null, hasHeader: null, items: [] };
}

/** Puts a meaning on a column, or none: what it held before is then nowhere, and a meaning stands on one column only. */
export function holdColumn(choices: TableChoices, before: Holding | null, number: number, holds: Holding | null): TableChoices {
  const columns = { ...choices.columns };
  if (before !== null) columns[before] = null;
  if (holds !== null) columns[holds] = number;
  return { ...choices, columns };
}

/** Cuts the table anew: columns chosen before would be others. */
export function cutBy(choices: TableChoices, delimiter: TableChoices['delimiter']): TableChoices {
  return { ...choices, delimiter, columns: {} };
}

/** Takes a text of the work for an item, or for a line of its own; `ofCar` are the items of the car it stands for. */
export function takeFor(choices: TableChoices, text: string, item: string | null, ofCar: readonly string[]): TableChoices {
  const others = choices.items.filter((one) => one.text !== text || (one.item !== null && !ofCar.includes(one.item)));
  // Items go before lines of their own: the same text may mean an item of one car and none of another.
  return { ...choices, items: item === null ? [...others, { text, item }] : [{ text, item }, ...others] };
}

/** The items of the car that some of them are of. */
function itemsBeside(view: ImportView, some: readonly string[]): readonly string[] {
  return view.cars.map(({ items }) => items.map(({ id }) => id)).find((ids) => ids.some((id) => some.includes(id))) ?? [];
}

/** Takes an answer to a question. */
export function answerQuestion(choices: TableChoices, { answer, subject, options }: ImportQuestion, value: string, view: ImportView): TableChoices {
  switch (answer) {
    case 'columns': {
      const [holds, number] = value.split('=');
      const column = view.columns.find((one) => String(one.number) === number);
      return column === undefined ? choices : holdColumn(choices, column.holds, column.number, holds as Holding);
    }
    case 'items':
      return takeFor(choices, subject ?? '', value === '' ? null : value, itemsBeside(view, options.map((option) => option.value)));
    default:
      return { ...choices, [answer]: value };
  }
}
