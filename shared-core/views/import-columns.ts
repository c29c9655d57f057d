import { ok, refuse, type Result } from '../result/result.ts';

/** What a column of an imported table holds. */
export type ImportColumn = 'date' | 'odometer' | 'unit' | 'car' | 'note' | 'work' | 'place' | 'cost' | 'by';

/** Heads by which a column is known, in lower case. */
const HEADS: Readonly<Record<ImportColumn, readonly string[]>> = {
  date: ['date', 'day', 'on'],
  odometer: ['odometer', 'reading', 'km', 'mi', 'miles', 'mileage', 'kilometres', 'kilometers', 'distance'],
  unit: ['unit'],
  car: ['car', 'vehicle'],
  note: ['note', 'notes', 'remark', 'comment'],
  work: ['work', 'title', 'what', 'service', 'job'],
  place: ['place', 'where'],
  cost: ['cost', 'price', 'amount', 'total'],
  by: ['by', 'done by', 'garage', 'workshop'],
};

const UNIT_HEADS: Readonly<Record<string, 'km' | 'mi'>> = { km: 'km', kilometres: 'km', kilometers: 'km', mi: 'mi', miles: 'mi' };

/** Where each known column stands, and the unit that the head of the odometer's column names. */
export interface MatchedColumns {
  readonly at: ReadonlyMap<ImportColumn, number>;
  readonly unit: 'km' | 'mi' | null;
  /** Heads that were not recognised and are left out. */
  readonly ignored: readonly string[];
}

/**
 * Matches the heads of a table to what is known. A table needs a date, and an odometer or the work done.
 *
 * @example matchColumns(['Date', 'km']) //=> date at 0, odometer at 1, unit km
 */
export function matchColumns(heads: readonly string[]): Result<MatchedColumns> {
  const at = new Map<ImportColumn, number>();
  const ignored: string[] = [];
  let unit: 'km' | 'mi' | null = null;
  heads.forEach((head, index) => {
    const name = head.trim().toLowerCase();
    const column = (Object.keys(HEADS) as ImportColumn[]).find((one) => HEADS[one].includes(name) && !at.has(one));
    if (column === undefined) ignored.push(head);
    else at.set(column, index);
    if (column === 'odometer') unit = UNIT_HEADS[name] ?? null;
  });
  if (!at.has('date')) return refuse('import-without-date');
  if (!at.has('odometer') && !at.has('work')) return refuse('import-without-values');
  return ok({ at, unit, ignored });
}
