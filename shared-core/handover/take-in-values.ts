import { cardFigureSet } from '../fleet/card-figure.ts';
import { layUpSet } from '../fleet/lay-up.ts';
import type { Json } from '../journal/canonical-json.ts';
import type { EntryValues } from '../journal/entry-values.ts';
import { paperTied } from '../records/paper-tie.ts';
import { renameIds } from './rename-ids.ts';
import type { PackToTakeIn, TakenEntry } from './pack-to-take-in.ts';

/** What belongs to the other household and not to the car: its shelf, its specifications, how it drove. */
const NOT_TAKEN: Readonly<Record<string, Json>> = { lotsUsed: [], needs: [], declaredAYear: null };

/** What a garage or an office asks; a price in another currency is none here, and is read in the pack. */
const PRICES = ['price', 'garagePrice'] as const;

interface Here {
  /** The id here of a thing that is taken in; null of any other. */
  readonly named: (id: string) => string | null;
  /** Amounts of the pack are in another currency than this household's, or nobody said in which. */
  readonly isOther: boolean;
}

/** What an entry of a pack says in this household: its ids renamed, without what belongs to the other household. */
export function valuesHere({ kind, values }: TakenEntry, pack: PackToTakeIn, { named, isOther }: Here): EntryValues {
  const renamed = renameIds(values as Json, named) as Record<string, Json>;
  return { ...renamed, ...replaced(renamed, NOT_TAKEN), ...(isOther ? replaced(renamed, { price: null, garagePrice: null }) : {}), ...papersHere(renamed, pack), ...ofKind(kind.kind, renamed, pack, named) } as EntryValues;
}

/** Whether a price of an item or of a duty is lost where its currency is another one. */
export function pricesLost(values: EntryValues): boolean {
  return PRICES.some((name) => typeof values[name] === 'number');
}

function replaced(values: Readonly<Record<string, Json>>, instead: Readonly<Record<string, Json>>): Record<string, Json> {
  return Object.fromEntries(Object.entries(instead).filter(([name]) => Object.hasOwn(values, name)));
}

/** A copy in which parts are blacked out takes the place of the paper it was made from. */
function papersHere(values: Readonly<Record<string, Json>>, { papers, history }: PackToTakeIn): Record<string, Json> {
  const copies = new Map(history.papers.map((paper) => [paper.redactedFrom, paper.sha256]));
  const here = (id: string) => [id, copies.get(id) ?? ''].find((one) => papers.has(one)) ?? null;
  const { papers: list, paper } = values;
  const all = Array.isArray(list) ? list.filter((id: Json) => typeof id === 'string') : null;
  return { ...(all === null ? {} : { papers: [...new Set(all.flatMap((id) => here(id) ?? []))] }), ...(typeof paper === 'string' ? { paper: here(paper) } : {}) };
}

function ofKind(kind: string, values: Readonly<Record<string, Json>>, { today, history }: PackToTakeIn, named: Here['named']): Record<string, Json> {
  // The next keeper has had it since the day of taking it in, or changes that.
  if (Object.hasOwn(values, 'keptSince')) return { keptSince: today < history.composedOn ? history.composedOn : today };
  if (kind === paperTied.kind && typeof values['to'] === 'string') return { to: named(values['to']) };
  if (kind === cardFigureSet.kind) return { source: sourceHere(values['source'] ?? null), sure: values['sure'] ?? false };
  // A rest that had not ended ended with its keeper.
  return kind === layUpSet.kind && values['to'] === null ? { to: history.composedOn } : {};
}

const LONGEST_SOURCE = 120;

/** Where a figure of a data card comes from: the earlier keeper's pack, and what that keeper named. */
function sourceHere(source: Json): string {
  const first = 'earlier keeper’s pack';
  return (typeof source === 'string' && !source.startsWith(first) ? `${first}: ${source}` : typeof source === 'string' ? source : first).slice(0, LONGEST_SOURCE).trim();
}
