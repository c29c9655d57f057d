import { cars, carSet, type Car } from '../fleet/car.ts';
import { departures } from '../fleet/departure.ts';
import { HOUSEHOLD_ID, households } from '../fleet/household.ts';
import { readings } from '../fleet/reading.ts';
import type { Json } from '../journal/canonical-json.ts';
import { newEntry, type AnyEntryKind, type Entry } from '../journal/entry-kind.ts';
import type { EntryValues } from '../journal/entry-values.ts';
import type { Facts } from '../journal/facts.ts';
import { memoryFacts } from '../journal/memory-facts.ts';
import type { EntryKinds } from '../journal/replay.ts';
import { withdrawnSeqs } from '../journal/withdrawal.ts';
import { previousPacks } from '../records/previous-pack.ts';
import { workRecorded } from '../records/work-record.ts';
import { must } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import type { PackToTakeIn, ReadPack, TakenEntry, TakenIn } from './pack-to-take-in.ts';
import { namerOf } from './take-in-ids.ts';
import { noteOf } from './take-in-note.ts';
import { isTaken, readTaken, TAKEN } from './take-in-rows.ts';
import { pricesLost, valuesHere } from './take-in-values.ts';

/**
 * The entries by which a car of a pack becomes one of this household, with its history: what stands at the end of the pack's rows, under ids of
 * this household's own. A car that left and comes back with its next keeper's pack is another one beside the one that left. Refused:
 * `pack-taken-in-already`, `car-there-already` (one vehicle identification number), `car-is-own` (a pack of this household's own),
 * `pack-without-car`, `pack-from-newer` (what would be taken in is of a form that only a newer program reads).
 */
export function takeInPack(kinds: EntryKinds, here: Facts, pack: PackToTakeIn): Result<TakenIn> {
  const { digest, rows, history } = pack;
  if (here.all(previousPacks).some((one) => one.pack === digest)) return refuse('pack-taken-in-already', { name: history.name });
  if (rows.entries.some(({ row }) => isTaken(row.kind) && row.version > must(kinds.get(row.kind), 'kind that is taken').version)) return refuse('pack-from-newer', { name: history.name });
  const readable = rows.entries.flatMap((entry) => readTaken(kinds, entry, history.papers) ?? []);
  const there = memoryFacts(kinds, readable);
  const [car] = there.all(cars);
  if (car === undefined) return refuse('pack-without-car');
  const same = sameCar(here, pack, car);
  if (same !== null) return same;
  return ok(entriesOf({ pack, there, car, readable }, here.get(households, HOUSEHOLD_ID)?.currency ?? null));
}

function sameCar(here: Facts, { seal, ownFingerprint }: PackToTakeIn, car: Car): Result<never> | null {
  const gone = new Set(here.all(departures).map((one) => one.car));
  const own = seal.seal.keyFingerprint === ownFingerprint ? here.get(cars, car.id) : null;
  if (own !== null) return refuse(gone.has(own.id) ? 'car-is-own-and-left' : 'car-is-own', { name: own.name });
  const same = here.all(cars).find((one) => !gone.has(one.id) && ((one.vin !== null && one.vin === car.vin) || cameFrom(here, one.id, seal.seal.keyFingerprint, car.id)));
  return same === undefined ? null : refuse('car-there-already', { name: same.name });
}

/** The same car of the same keeper, by another pack. */
function cameFrom(here: Facts, car: string, keyFingerprint: string, carThere: string): boolean {
  return here.ofCar(previousPacks, car).some((one) => one.keyFingerprint === keyFingerprint && one.carThere === carThere);
}

function entriesOf(read: ReadPack, currency: string | null): TakenIn {
  const { pack, there, car, readable } = read;
  const found = foundIn(read);
  const named = namerOf(pack.digest, new Set(found.map((one) => one.old)));
  const known = new Set(found.map((one) => one.old));
  const isOther = pack.history.currency === undefined || pack.history.currency !== currency;
  const entries = found.flatMap((one): TakenEntry[] => {
    const values = valuesHere(one, pack, { named: (id) => (known.has(id) ? named(id) : null), isOther });
    return one.kind.schema.safeParse(values).success ? [{ ...one, values }] : [];
  });
  const note = noteOf(read, entries, named);
  const left = pack.rows.entries.length - readable.length + found.length - entries.length;
  return {
    entries: [...entries.map(({ kind, values }) => newEntry(kind, values as never)), note.entry],
    car: must(entries.find((one) => one.kind === carSet), 'car that is taken in').values as unknown as Car,
    records: note.records,
    readings: there.all(readings).length,
    left,
    ...(isOther && hasAmounts(entries) ? { otherCurrency: pack.history.currency ?? null } : {}),
    pricesLeft: isOther ? found.filter((one) => one.old !== car.id && pricesLost(one.values)).length : 0,
  };
}

function hasAmounts(entries: readonly TakenEntry[]): boolean {
  return entries.some(({ kind, values }) => kind === workRecorded && (values['printedTotalMinor'] !== null || (values['costs'] as Json[]).length > 0)) || entries.some(({ values }) => typeof values['paidMinor'] === 'number');
}

/** What stands of each family; of records and of what was seen every entry, so that what was amended stays to be read. */
function foundIn({ there, readable }: ReadPack): TakenEntry[] {
  const undone = new Set(readable.flatMap((entry) => withdrawnSeqs(entry)));
  const standing = readable.filter((entry) => !undone.has(entry.seq));
  const bySeq = new Map(readable.map((entry) => [entry.seq, entry]));
  return TAKEN.flatMap(({ family, kind, later }): TakenEntry[] => {
    if (later !== undefined) return versionsOf(standing.filter((one) => one.kind === kind.kind || one.kind === later.kind), kind, later);
    const stamps = there.stamps(family, null);
    return there.all(family as typeof family & { readonly id: string }).map((fact): TakenEntry => {
      const { id } = fact as { readonly id: string };
      const { seq } = must(stamps.get(id), 'stamp');
      return { kind, old: id, seq, at: must(bySeq.get(seq), 'entry of a fact').at, values: fact as unknown as EntryValues };
    });
  });
}

/** The first entry of each that can be read is what was written first, whatever it was. */
function versionsOf(entries: readonly Entry[], kind: AnyEntryKind, later: AnyEntryKind): TakenEntry[] {
  const seen = new Set<string>();
  return entries.map((one) => {
    const old = textOf(one.values['id']);
    const isFirst = !seen.has(old);
    seen.add(old);
    const { why: _why, ...rest } = one.values;
    return { kind: isFirst || one.kind === kind.kind ? kind : later, old, seq: one.seq, at: one.at, values: isFirst ? rest : one.values };
  });
}

function textOf(value: Json | undefined): string {
  return typeof value === 'string' ? value : '';
}
