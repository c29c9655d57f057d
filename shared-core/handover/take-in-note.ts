import { renewalRecorded } from '../care/renewal.ts';
import { carSet } from '../fleet/car.ts';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import { earlierThings, type EarlierThing } from '../records/earlier-things.ts';
import { packTakenIn, previousPacks, type PackBefore } from '../records/previous-pack.ts';
import { workAmended } from '../records/work-amended.ts';
import { workRecorded } from '../records/work-record.ts';
import type { PackPeriod } from './pack-period.ts';
import type { ReadPack, TakenEntry } from './pack-to-take-in.ts';
import { withheldIn } from './take-in-rows.ts';

/** Not the car's but the other household's: that it is withheld says nothing of the car. */
const OF_THE_HOUSEHOLD: ReadonlySet<string> = new Set(['lotsUsed', 'declaredAYear', 'needs']);

/** The entry that says of a pack what it brought and whose that is; and how many records are among it. */
export function noteOf(read: ReadPack, entries: readonly TakenEntry[], named: (id: string) => string): { readonly entry: NewEntry; readonly records: number } {
  const { pack, there, car } = read;
  const { history, rows, seal, digest, bytes, sealed, today } = pack;
  const before = earlierThings(there, car.id);
  const ids = (of: (one: TakenEntry) => boolean) => [...new Set(entries.filter(of).map((one) => one.old))];
  const records = ids((one) => one.kind === workRecorded).map((old) => ({ id: named(old), ...writtenThere(old, entries, before.get(old)) }));
  const currencies = ids((one) => one.kind === workRecorded || one.kind === renewalRecorded).flatMap((old) => otherCurrency(named(old), before.get(old), history.currency ?? null));
  const withheld = withheldOf(read, entries, before).map(({ old, fields }) => ({ id: named(old), fields }));
  const earlier = packsBefore(read);
  const note = {
    id: named('pack'), car: named(car.id), pack: digest, bytes, name: history.name, composedOn: history.composedOn, takenOn: today, rows: rows.entries.length,
    keyFingerprint: seal.seal.keyFingerprint, sealed, carThere: car.id, records,
    others: ids((one) => one.kind !== workRecorded && one.kind !== workAmended && one.kind !== carSet).map(named),
    currency: history.currency ?? null, entries: entries.length,
    ...(currencies.length === 0 ? {} : { currencies }), ...(withheld.length === 0 ? {} : { withheld }), ...(earlier.length === 0 ? {} : { before: earlier }), ...periodOf(history),
  };
  return { entry: newEntry(packTakenIn, note), records: records.length };
}

/** Records that had come to that keeper from one before keep the moments at which they were first written and amended. */
function writtenThere(old: string, entries: readonly TakenEntry[], before: EarlierThing | undefined): { readonly entered: string; readonly amended?: string[]; readonly of?: string } {
  const own = entries.filter((one) => one.old === old);
  const changed = own.filter((one) => one.kind === workAmended).map((one) => one.at);
  const amended = before === undefined ? changed : [...before.amended];
  return { entered: before?.entered ?? own[0]?.at ?? '', ...(amended.length === 0 ? {} : { amended }), ...(before === undefined ? {} : { of: before.pack }) };
}

function otherCurrency(id: string, before: EarlierThing | undefined, own: string | null): { readonly id: string; readonly currency: string | null }[] {
  return before === undefined || before.currency === own ? [] : [{ id, currency: before.currency }];
}

/** What was withheld of each thing by its last entry, and what a keeper before had withheld of it. */
function withheldOf({ pack }: ReadPack, entries: readonly TakenEntry[], before: ReadonlyMap<string, EarlierThing>): { readonly old: string; readonly fields: string[] }[] {
  const rows = new Map(pack.rows.entries.map((entry) => [entry.row.seq, entry]));
  const last = new Map(entries.map((one) => [one.old, one.seq]));
  return [...last].flatMap(([old, seq]) => {
    const row = rows.get(seq);
    const fields = [...(row === undefined ? [] : withheldIn(row, pack.history.papers)), ...(before.get(old)?.withheld ?? [])].filter((field) => !OF_THE_HOUSEHOLD.has(field));
    return fields.length === 0 ? [] : [{ old, fields: [...new Set(fields)].sort() }];
  });
}

/** The packs that the keeper of this one had come by, and those in them: the first one first. */
function packsBefore({ pack, there, car }: ReadPack): PackBefore[] {
  const isLeftOut = new Set(pack.history.previous?.filter((one) => one.path === null).map((one) => one.sha256));
  const direct = [...there.ofCar(previousPacks, car.id)].sort((a, b) => (a.composedOn < b.composedOn ? -1 : 1));
  return direct.flatMap((one) => {
    const handedOver = !isLeftOut.has(one.pack);
    const { name, composedOn, rows } = one;
    return [...(one.before ?? []).map((earlier) => ({ ...earlier, handedOver: earlier.handedOver && handedOver })), { name, composedOn, rows, pack: one.pack, handedOver, ...periodOf(one) }];
  });
}

function periodOf({ period }: { readonly period?: PackPeriod | undefined }): { readonly period?: PackPeriod } {
  return period === undefined ? {} : { period };
}
