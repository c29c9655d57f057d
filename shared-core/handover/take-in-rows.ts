import { measurementTaken, measurements } from '../care/measurement.ts';
import { obligations, obligationSet } from '../care/obligation.ts';
import { recalls, recallSet } from '../care/recall.ts';
import { renewalRecorded, renewals } from '../care/renewal.ts';
import { serviceItems, serviceItemSet } from '../care/service-item.ts';
import { cardFigureCleared, cardFigures, cardFigureSet } from '../fleet/card-figure.ts';
import { cars, carSet } from '../fleet/car.ts';
import { instrumentReplaced, instruments } from '../fleet/instrument.ts';
import { layUpRemoved, layUps, layUpSet } from '../fleet/lay-up.ts';
import { readingRecorded, readings } from '../fleet/reading.ts';
import { wheelMoved, wheelMoves, wheels, wheelSet } from '../fleet/wheel.ts';
import type { Json } from '../journal/canonical-json.ts';
import type { AnyEntryKind, Entry } from '../journal/entry-kind.ts';
import type { EntryValues } from '../journal/entry-values.ts';
import type { Family } from '../journal/family.ts';
import type { EntryKinds } from '../journal/replay.ts';
import { withdrawnKind } from '../journal/withdrawal.ts';
import { observationAmended } from '../records/observation-amended.ts';
import { observationNoted, observations } from '../records/observation.ts';
import { paperTied, paperTies, paperUntied } from '../records/paper-tie.ts';
import { packTakenIn } from '../records/previous-pack.ts';
import { workAmended } from '../records/work-amended.ts';
import { workRecorded, workRecords } from '../records/work-record.ts';
import { must } from '../result/assert.ts';
import type { HistoryPart } from './history-part.ts';
import { shownValues, type PackEntry } from './journal-part.ts';

/** A family that a next keeper goes on with, and the kinds that state it. */
interface TakenFamily {
  readonly family: Family<never>;
  readonly kind: AnyEntryKind;
  /** Kinds of later entries, where the first one is to be read beside what it was amended to. */
  readonly later?: AnyEntryKind;
}

const taken = (family: unknown, kind: AnyEntryKind, later?: AnyEntryKind): TakenFamily => ({ family: family as Family<never>, kind, ...(later === undefined ? {} : { later }) });

/** What a next keeper goes on with, in the order in which it is written. The rest stays in the pack, and is read there. */
export const TAKEN: readonly TakenFamily[] = [
  taken(cars, carSet), taken(instruments, instrumentReplaced), taken(readings, readingRecorded), taken(serviceItems, serviceItemSet), taken(obligations, obligationSet), taken(recalls, recallSet),
  taken(workRecords, workRecorded, workAmended), taken(observations, observationNoted, observationAmended), taken(renewals, renewalRecorded), taken(wheels, wheelSet), taken(wheelMoves, wheelMoved),
  taken(measurements, measurementTaken), taken(layUps, layUpSet), taken(cardFigures, cardFigureSet), taken(paperTies, paperTied),
];

/** Kinds that bring nothing and say what of the rest still stands, or whose it was. */
const BESIDE: ReadonlySet<string> = new Set([withdrawnKind, packTakenIn, paperUntied, layUpRemoved, cardFigureCleared].map((kind: AnyEntryKind) => kind.kind));

/** What a field that is withheld, or means nothing in another household, is taken as. */
const WITHOUT: Readonly<Record<string, Json>> = {
  vin: null, registration: null, declaredAYear: null, price: null, garagePrice: null, placeName: null, doneBy: null, approvedBy: null, reference: null, method: null,
  note: '', costs: [], printedTotalMinor: null, paidMinor: null, lotsUsed: [], text: 'withheld by the earlier keeper', why: 'withheld by the earlier keeper',
};

/** Whether entries of a kind say what a next keeper goes on with. */
export function isTaken(kind: string): boolean {
  return BESIDE.has(kind) || TAKEN.some((one) => one.kind.kind === kind || one.later?.kind === kind);
}

/** An entry as this program reads it; null where it is of no use here, or lacks what is needed. */
export function readTaken(kinds: EntryKinds, { row, shown, withheld }: PackEntry, papers: HistoryPart['papers']): Entry | null {
  const kind = kinds.get(row.kind);
  if (kind === undefined || !isTaken(row.kind)) return null;
  // Where a row keeps back which papers it names, the pack says which of its files take their place.
  const named = papersInstead(row.seq, papers);
  const instead: Readonly<Record<string, Json>> = { ...WITHOUT, papers: named, paper: named[0] ?? null };
  const without = Object.fromEntries(withheld.flatMap((field) => (Object.hasOwn(instead, field) ? [[field, instead[field] ?? null] as const] : [])));
  const values = { ...without, ...shownValues({ row, shown, withheld, proof: [] }) } as EntryValues;
  const present = row.version === kind.version ? values : must(kind.upgrade, 'upgrade')(values, row.version);
  const parsed = kind.schema.safeParse(present);
  return parsed.success ? { seq: row.seq, at: row.at, kind: row.kind, version: kind.version, subject: row.subject, values: present } : null;
}

function papersInstead(row: number, papers: HistoryPart['papers']): string[] {
  return papers.filter((paper) => paper.namedIn?.includes(row)).map((paper) => paper.sha256);
}

/** What of an entry a next keeper is not shown: fields withheld, and papers that were left out of the pack. */
export function withheldIn({ row, shown, withheld }: PackEntry, papers: HistoryPart['papers']): readonly string[] {
  const inPack = new Set(papers.flatMap((paper) => [paper.sha256, ...(paper.redactedFrom === null ? [] : [paper.redactedFrom])]));
  const named = [shown['papers']?.value, shown['paper']?.value].flatMap((value) => value ?? []).filter((id) => typeof id === 'string');
  const isInstead = (field: string) => (field === 'papers' || field === 'paper') && papersInstead(row.seq, papers).length > 0;
  const fields = withheld.filter((field) => !isInstead(field));
  return [...new Set([...fields, ...(named.some((id) => !inPack.has(id)) ? ['papers'] : [])])].sort();
}
