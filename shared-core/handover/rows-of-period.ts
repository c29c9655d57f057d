import { localDate, type LocalDate } from '../calendar/local-date.ts';
import type { KeptEntry } from './journal-part.ts';
import { isWhole, isWithin, type PackPeriod } from './pack-period.ts';

/** The kinds of entries that tell of one day, by what they tell of, and the field that names the day. */
const DATED: Readonly<Record<string, { readonly of: string; readonly field: string } | undefined>> = {
  'reading-recorded': { of: 'reading', field: 'date' },
  'work-recorded': { of: 'record', field: 'date' },
  'work-amended': { of: 'record', field: 'date' },
  'observation-noted': { of: 'observation', field: 'date' },
  'measurement-taken': { of: 'measurement', field: 'date' },
  'renewal-recorded': { of: 'renewal', field: 'on' },
  'follow-up-set': { of: 'follow-up', field: 'madeOn' },
};

interface DatedEntry {
  readonly key: string;
  readonly date: LocalDate;
}

/**
 * The entries that a pack of a period holds. One thing is shown with all its entries or with none, by the day that the last of
 * them that was not withdrawn says (where all were: of all); a paper's tie goes with what it is tied to. What tells of no day (the car, its items, its obligations) is always shown.
 */
export function rowsOfPeriod<Entry extends KeptEntry & { readonly withdrawn: boolean }>(entries: readonly Entry[], period: PackPeriod): readonly Entry[] {
  if (isWhole(period)) return entries;
  // What was withdrawn comes first, so that what stands has the last word.
  const inOrder = [...entries.filter((entry) => entry.withdrawn), ...entries.filter((entry) => !entry.withdrawn)];
  const dates = new Map(inOrder.flatMap((entry) => dated(entry) ?? []).map(({ key, date }) => [key, date]));
  const ties = new Map(entries.flatMap((entry) => tied(entry) ?? []).map(({ id, to }) => [id, to]));
  return entries.filter((entry) => {
    const date = dates.get(dated(entry)?.key ?? ties.get(textOf(entry, 'id') ?? '') ?? '');
    return date === undefined || isWithin(period, date);
  });
}

function dated({ row, kept }: KeptEntry): DatedEntry | null {
  const kind = DATED[row.kind];
  const [day, id] = [textOf({ row, kept }, kind?.field ?? ''), textOf({ row, kept }, 'id')];
  if (kind === undefined || day === null || id === null) return null;
  const date = localDate(day);
  return date.ok ? { key: `${kind.of} ${id}`, date: date.value } : null;
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
