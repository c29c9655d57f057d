import { currenciesOf } from '../../units/amount-text.ts';
import type { DistanceUnit } from '../../units/distance.ts';
import { importColumns, type ImportColumn } from './import-choices.ts';

/** Heads by which a column is known, the surest first. */
const HEADS: Readonly<Record<ImportColumn, readonly string[]>> = {
  date: ['date', 'day', 'on', 'when', 'date of work', 'service date', 'reading date', 'work date', 'date done'],
  reading: ['reading', 'odometer', 'odometer reading', 'odo', 'mileage', 'shown', 'distance', 'at', 'counter'],
  unit: ['unit', 'units', 'distance unit', 'odometer unit'],
  car: ['car', 'vehicle', 'car name', 'registration', 'reg', 'plate', 'number plate'],
  work: ['line', 'work done', 'work', 'item', 'items', 'description', 'job', 'task', 'service', 'what', 'title', 'details'],
  outcome: ['outcome'],
  cost: ['cost', 'price', 'amount', 'total', 'paid', 'total cost', 'cost total', 'sum'],
  place: ['garage', 'place', 'workshop', 'where', 'location', 'done at', 'shop'],
  by: ['by', 'done by', 'who', 'mechanic'],
  note: ['note', 'notes', 'remark', 'remarks', 'comment', 'comments', 'memo'],
};

const UNITS: ReadonlyMap<string, DistanceUnit> = new Map([
  ['km', 'km'], ['kms', 'km'], ['kilometre', 'km'], ['kilometres', 'km'], ['kilometer', 'km'], ['kilometers', 'km'],
  ['mi', 'mi'], ['mile', 'mi'], ['miles', 'mi'],
]);

/** What a head says of its column. */
export interface KnownHead {
  readonly column: ImportColumn;
  /** How sure the word is for its column: 0 the surest. */
  readonly rank: number;
  readonly unit: DistanceUnit | null;
  /** The currencies that the head names; null where it names none. */
  readonly currencies: readonly string[] | null;
}

/**
 * What a column holds by its head; a unit or a currency beside the word is read too. Null for a head that is not known.
 *
 * @example columnOfHead('Odometer (mi)') //=> { column: 'reading', rank: 1, unit: 'mi', currencies: null }
 */
export function columnOfHead(head: string): KnownHead | null {
  const words = head.slice(0, 80).normalize('NFKC').toLowerCase().replace(/[_()[\]{}:;,/\\-]+/g, ' ').trim().split(/\s+/).filter((word) => word !== '');
  const whole = words.join(' ');
  const unit = words.map(unitOfWord).find((one) => one !== null) ?? null;
  const bare = words.filter((word) => unitOfWord(word) === null).join(' ');
  if (unit !== null) return bare === '' || bare === 'in' ? { column: 'reading', rank: 0, unit, currencies: null } : named('reading', bare, { unit });
  const known = importColumns.map((column) => named(column, whole, {})).find((one) => one !== null);
  return known ?? costIn(words);
}

/** The unit that a word is; null for any other. @example unitOfWord('Miles') //=> 'mi' */
export function unitOfWord(word: string): DistanceUnit | null {
  return UNITS.get(word.trim().toLowerCase().replace(/\.$/, '')) ?? null;
}

function named(column: ImportColumn, words: string, more: { readonly unit?: DistanceUnit; readonly currencies?: readonly string[] }): KnownHead | null {
  const rank = HEADS[column].indexOf(words);
  return rank < 0 ? null : { column, rank, unit: more.unit ?? null, currencies: more.currencies ?? null };
}

/** `Cost GBP`, `Price £`. */
function costIn(words: readonly string[]): KnownHead | null {
  const last = words.at(-1) ?? '';
  const currencies = currenciesOf(last);
  return words.length < 2 || currencies.length === 0 ? null : named('cost', words.slice(0, -1).join(' '), { currencies });
}
