import { localDate, type LocalDate } from '../calendar/local-date.ts';
import type { KeptEntry } from './journal-part.ts';
import { isWhole, isWithin, type PackPeriod } from './pack-period.ts';

/** The kinds of entries that tell of one day, by what they tell of, and the field that names the day; `unless` is the field that says that it still goes on. */
const DATED: Readonly<Record<string, { readonly of: string; readonly field: string; readonly unless?: string } | undefined>> = {
  'reading-recorded': { of: 'reading', field: 'date' },
  'work-recorded': { of: 'record', field: 'date' },
  'work-amended': { of: 'record', field: 'date' },
  'observation-noted': { of: 'observation', field: 'date' },
  'measurement-taken': { of: 'measurement', field: 'date' },
  'renewal-recorded': { of: 'renewal', field: 'on' },
  'follow-up-set': { of: 'follow-up', field: 'madeOn' },
  'recall-set': { of: 'recall', field: 'doneOn', unless: 'nextOn' },
};

interface DatedEntry {
  readonly key: string;
  /** Null where it still goes on. */
  readonly date: LocalDate | null;
}

/**
 * The entries that a pack of a period holds. One thing is shown with all its entries or with none, by the day that the last of
 * them that was not withdrawn says (where all were: of all); a paper's tie goes with what it is tied to. What tells of no
 * day (the car, its items, its obligations, its wheels and instruments, a recall that is still to be seen to) is always shown.
 */
export function rowsOfPeriod<Entry extends KeptEntry & { readonly withdrawn: boolean }>(entries: readonly Entry[], period: PackPeriod): readonly Entry[] {
  if (isWhole(period)) return entries;
  // What was withdrawn comes first, so that what stands has the last word.
  const inOrder = [...entries.filter((entry) => entry.withdrawn), ...entries.filter((entry) => !entry.withdrawn)];
  const dates = new Map(inOrder.flatMap((entry) => dated(entry) ?? []).map(({ key, date }) => [key, date]));
  const ties = new Map(entries.flatMap((entry) => tied(entry) ?? []).map(({ id, to }) => [id, to]));
  return entries.filter((entry) => {
    const date = dates.get(dated(entry)?.key ?? ties.get(textOf(entry, 'id') ?? '') ?? '');
    return date == null || isWithin(period, date);
  });
}

function dated({ row, kept }: KeptEntry): DatedEntry | null {
  const kind = DATED[row.kind];
  const id = textOf({ row, kept }, 'id');
  if (kind === undefined || id === null) return null;
  const goesOn = kind.unless !== undefined && textOf({ row, kept }, kind.unless) !== null;
  const date = localDate(goesOn ? '' : (textOf({ row, kept }, kind.field) ?? ''));
  if (!date.ok && kind.unless === undefined) return null;
  return { key: `${kind.of} ${id}`, date: date.ok ? date.value : null };
}

/** A paper tied to a record or to something seen: the tie's id, and the key of what it is tied to. */
function tied(entry: KeptEntry): { readonly id: string; readonly to: string } | null {
  const [id, kind, to] = ['id', 'kind', 'to'].map((field) => textOf(entry, field));
  return entry.row.kind !== 'paper-tied' || id == null || kind == null || to == null ? null : { id, to: `${kind} ${to}` };
}

function textOf({ kept }: KeptEntry, field: string): string | null {
  const value = kept[field]?.value;
  return typeof value === 'string' ? value : null;
}
