import type { LocalDate } from '../calendar/local-date.ts';
import { obligations, obligationSet } from '../care/obligation.ts';
import { recalls, recallSet } from '../care/recall.ts';
import { serviceItems, serviceItemSet } from '../care/service-item.ts';
import { cars, carSet, type Car } from '../fleet/car.ts';
import { instrumentReplaced, instruments } from '../fleet/instrument.ts';
import { readingRecorded, readings } from '../fleet/reading.ts';
import type { Json } from '../journal/canonical-json.ts';
import { newEntry, type AnyEntryKind, type Entry, type NewEntry } from '../journal/entry-kind.ts';
import type { EntryValues } from '../journal/entry-values.ts';
import type { Facts } from '../journal/facts.ts';
import type { Family } from '../journal/family.ts';
import { memoryFacts } from '../journal/memory-facts.ts';
import type { EntryKinds } from '../journal/replay.ts';
import { withdrawnKind } from '../journal/withdrawal.ts';
import { observationNoted, observations } from '../records/observation.ts';
import { packTakenIn, previousPacks } from '../records/previous-pack.ts';
import { workAmended } from '../records/work-amended.ts';
import { workRecorded, workRecords } from '../records/work-record.ts';
import { must } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import type { HistoryPart } from './history-part.ts';
import { shownValues, type PackEntry, type RowsPart, type SealPart } from './journal-part.ts';
import { renameIds } from './rename-ids.ts';

/** A sound pack that is to be taken in. */
export interface PackToTakeIn {
  readonly history: HistoryPart;
  readonly rows: RowsPart;
  readonly seal: SealPart;
  /** The SHA-256 of its ZIP, and its length. */
  readonly digest: string;
  readonly bytes: number;
  readonly sealed: boolean;
  /** The digests of the papers in it. */
  readonly papers: ReadonlySet<string>;
  readonly today: LocalDate;
  /** The fingerprint of this household's own key. */
  readonly ownFingerprint: string;
}

/** What a car came with: entries to write, and what they bring. */
export interface TakenIn {
  readonly entries: readonly NewEntry[];
  readonly car: Car;
  readonly records: number;
  readonly readings: number;
  /** Entries of kinds that a next keeper has no use for, or whose necessary fields are withheld: they stay in the pack. */
  readonly left: number;
}

/** What a next keeper goes on with: each family, and the kind that states it. The rest stays in the pack, and is read there. */
const TAKEN: readonly { readonly family: Family<never>; readonly kind: AnyEntryKind }[] = [
  { family: cars as Family<never>, kind: carSet }, { family: instruments as Family<never>, kind: instrumentReplaced }, { family: readings as Family<never>, kind: readingRecorded },
  { family: serviceItems as Family<never>, kind: serviceItemSet }, { family: obligations as Family<never>, kind: obligationSet }, { family: recalls as Family<never>, kind: recallSet },
  { family: workRecords as Family<never>, kind: workRecorded }, { family: observations as Family<never>, kind: observationNoted },
];

/** What a field that is withheld, or means nothing in another household, is taken as. */
const WITHOUT: Readonly<Record<string, Json>> = {
  vin: null, registration: null, declaredAYear: null, price: null, garagePrice: null, placeName: null, doneBy: null, approvedBy: null, reference: null, method: null,
  note: '', costs: [], printedTotalMinor: null, lotsUsed: [], text: 'withheld by the earlier keeper', why: 'withheld by the earlier keeper',
};
const LONGEST_ID = 64;
/** What belongs to the other household and not to the car: its shelf, its specifications, how it drove. */
const NOT_TAKEN: Readonly<Record<string, Json>> = { lotsUsed: [], needs: [], declaredAYear: null };

/**
 * The entries by which a car of a pack becomes one of this household, with its history: what stands at the end of the pack's rows, under ids of
 * this household's own. Refused: `pack-taken-in-already`, `car-there-already` (one vehicle identification number), `pack-without-car`,
 * `pack-from-newer` (what would be taken in is of a form that only a newer program reads).
 */
export function takeInPack(kinds: EntryKinds, here: Facts, pack: PackToTakeIn): Result<TakenIn> {
  const { digest, rows } = pack;
  if (here.all(previousPacks).some((one) => one.pack === digest)) return refuse('pack-taken-in-already', { name: pack.history.name });
  if (rows.entries.some(({ row }) => isTaken(row.kind) && row.version > must(kinds.get(row.kind), 'kind that is taken').version)) return refuse('pack-from-newer', { name: pack.history.name });
  const readable = rows.entries.flatMap((entry) => readEntry(kinds, entry, pack.history.papers) ?? []);
  const there = memoryFacts(kinds, readable);
  const [car] = there.all(cars);
  if (car === undefined) return refuse('pack-without-car');
  const isOwn = pack.seal.seal.keyFingerprint === pack.ownFingerprint;
  const same = here.all(cars).find((one) => (one.vin !== null && one.vin === car.vin) || (isOwn && one.id === car.id) || cameFrom(here, one.id, pack.seal.seal.keyFingerprint, car.id));
  if (same !== undefined) return refuse('car-there-already', { name: same.name });
  return ok(entriesOf(pack, there, car, rows.entries.length - readable.length));
}

/** The same car of the same keeper, by another pack. */
function cameFrom(here: Facts, car: string, keyFingerprint: string, carThere: string): boolean {
  return here.ofCar(previousPacks, car).some((one) => one.keyFingerprint === keyFingerprint && one.carThere === carThere);
}

/** Whether entries of a kind say what a next keeper goes on with. */
function isTaken(kind: string): boolean {
  return [workAmended.kind, withdrawnKind.kind, packTakenIn.kind].includes(kind) || TAKEN.some((one) => one.kind.kind === kind);
}

/** An entry as this program reads it; null where it is of no use here, or lacks what is needed. */
function readEntry(kinds: EntryKinds, { row, shown, withheld }: PackEntry, papers: HistoryPart['papers']): Entry | null {
  const kind = kinds.get(row.kind);
  if (kind === undefined || !isTaken(row.kind)) return null;
  // Where a row keeps back which papers it names, the pack says which of its files take their place.
  const named = papers.filter((paper) => paper.namedIn?.includes(row.seq)).map((paper) => paper.sha256);
  const instead: Readonly<Record<string, Json>> = { ...WITHOUT, papers: named, paper: named[0] ?? null };
  const without = Object.fromEntries(withheld.flatMap((field) => (Object.hasOwn(instead, field) ? [[field, instead[field] ?? null] as const] : [])));
  const values = { ...without, ...shownValues({ row, shown, withheld, proof: [] }) } as EntryValues;
  const present = row.version === kind.version ? values : must(kind.upgrade, 'upgrade')(values, row.version);
  const parsed = kind.schema.safeParse(present);
  return parsed.success ? { seq: row.seq, at: row.at, kind: row.kind, version: kind.version, subject: row.subject, values: present } : null;
}

function entriesOf(pack: PackToTakeIn, there: Facts, car: Car, left: number): TakenIn {
  const found = TAKEN.flatMap(({ family, kind }) => there.all(family as Family<{ readonly id: string }>).map((fact) => ({ kind, old: fact.id, fact: fact as unknown as Json })));
  const known = new Set(found.map((one) => one.old));
  const named = namerOf(pack.digest, known);
  const carHere = named(car.id);
  const facts = found.map(({ kind, old, fact }) => ({ kind, old, values: valuesHere(fact, pack, (id) => (known.has(id) ? named(id) : null)) }));
  const before = enteredThere(there, car.id);
  const stamps = there.stamps(workRecords, car.id);
  const records = there.all(workRecords).map(({ id }) => ({ id: named(id), entered: before.get(id) ?? must(stamps.get(id), 'stamp').firstAt }));
  const others = facts.filter((one) => one.kind !== workRecorded && one.kind !== carSet).map((one) => named(one.old));
  const { history, rows, seal, digest, bytes, sealed, today } = pack;
  const entries = facts.map(({ kind, values }) => newEntry(kind, values as never));
  const note = newEntry(packTakenIn, {
    id: named('pack'), car: carHere, pack: digest, bytes, name: history.name, composedOn: history.composedOn, takenOn: today, rows: rows.entries.length,
    keyFingerprint: seal.seal.keyFingerprint, sealed, carThere: car.id, records, others,
  });
  const taken = facts.find((one) => one.kind === carSet)?.values as unknown as Car;
  return { entries: [...entries, note], car: taken, records: records.length, readings: there.all(readings).length, left };
}

/** Records that had come to that keeper from one before keep the moment at which they were first written. */
function enteredThere(there: Facts, car: string): ReadonlyMap<string, string> {
  return new Map(there.ofCar(previousPacks, car).flatMap((one) => one.records.map(({ id, entered }) => [id, entered] as const)));
}

/** Ids of this household's own for those of a pack: as they are, or the end of a long one, numbered where another one has it already. */
function namerOf(digest: string, known: ReadonlySet<string>): (id: string) => string {
  const first = `k${digest.slice(0, 8)}-`;
  const room = LONGEST_ID - first.length;
  const used = new Set<string>();
  const names = new Map<string, string>();
  for (const id of [...known].sort((a, b) => a.length - b.length || (a < b ? -1 : 1))) {
    let end = id.slice(-room);
    for (let number = 2; used.has(end); number += 1) end = `${id.slice(-room).slice(0, room - 1 - String(number).length)}-${number}`;
    used.add(end);
    names.set(id, `${first}${end}`);
  }
  return (id) => names.get(id) ?? `${first}${id}`;
}

function valuesHere(fact: Json, { papers, today, history }: PackToTakeIn, named: (id: string) => string | null): EntryValues {
  const renamed = renameIds(fact, named) as Record<string, Json>;
  const own = Object.fromEntries(Object.entries(NOT_TAKEN).filter(([name]) => Object.hasOwn(renamed, name)));
  const list = renamed['papers'];
  const kept = Array.isArray(list) ? { papers: list.filter((id) => papers.has(String(id))) } : {};
  const one = typeof renamed['paper'] === 'string' && !papers.has(renamed['paper']) ? { paper: null } : {};
  // The next keeper has had it since the day of taking it in, or changes that.
  const since = Object.hasOwn(renamed, 'keptSince') ? { keptSince: today < history.composedOn ? history.composedOn : today } : {};
  return { ...renamed, ...own, ...kept, ...one, ...since } as EntryValues;
}
