import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { dateOfInstant, type LocalDate } from '../calendar/local-date.ts';
import { measurements, measurementSchema } from '../care/measurement.ts';
import { cars } from '../fleet/car.ts';
import { findHousehold } from '../fleet/find-car.ts';
import { readings, readingSchema } from '../fleet/reading.ts';
import type { Facts } from '../journal/facts.ts';
import { toldCost } from '../ledger/record-account.ts';
import { lots } from '../parts/lot.ts';
import { parts } from '../parts/part.ts';
import { earlierThings, type EarlierThing } from '../records/earlier-things.ts';
import { inspectionScore } from '../records/inspection-score.ts';
import { observations, observationSchema } from '../records/observation.ts';
import { papers, paperSchema } from '../records/paper.ts';
import { recordScore } from '../records/record-score.ts';
import { AMENDABLE, changedFields, type RecordVersion } from '../records/record-version.ts';
import { recordsWithPapers } from '../records/tied-papers.ts';
import { workRecords, workRecordSchema, type WorkRecord } from '../records/work-record.ts';
import { writtenWhen, writtenWhenSchema } from '../records/written-when.ts';
import { must } from '../result/assert.ts';
import { ok, type Result } from '../result/result.ts';
import { distanceUnitSchema } from '../units/distance-schema.ts';
import { earlierSchema } from './car-view.ts';
import { unitOfPart } from './order-lines.ts';

const elementSchema = z.object({ of: z.enum(['entry', 'inspection']), element: z.enum(['what', 'when', 'who', 'approved', 'extent', 'dateAndDistance', 'inspector', 'outcome', 'defects']), held: z.boolean(), /** An earlier keeper withheld what would tell. */ withheld: z.boolean() });

/** Why a record cannot be taken back: a seal has gone out over it, or something else stands upon it. */
const heldSchema = z.object({ by: z.enum(['seal', 'entry']), on: dateSchema.nullable() });

export const recordViewSchema = z.object({
  today: dateSchema,
  currency: z.string(),
  car: z.object({ id: z.string(), name: z.string(), unit: distanceUnitSchema }),
  record: workRecordSchema,
  totalMinor: z.number(),
  enteredAt: z.string(),
  written: writtenWhenSchema,
  /** Where it came with the pack of an earlier keeper. */
  earlier: earlierSchema.nullable(),
  reading: readingSchema.nullable(),
  /** What it holds of a full entry, and of an inspection where it is one. */
  elements: z.array(elementSchema),
  lots: z.array(z.object({ lot: z.string(), partName: z.string(), unit: z.string().nullable(), quantity: z.number() })),
  /** What was noted with it, and what was seen before and is settled by it. */
  noted: z.array(observationSchema),
  settled: z.array(observationSchema),
  /** What was measured with it: entered in the same step, or with its reading. */
  measured: z.array(measurementSchema),
  /** Its own, then those tied to it. */
  papers: z.array(paperSchema),
  /** Every entry of it, the first one first: those amended, and those withdrawn. */
  versions: z.array(z.object({ on: dateSchema, at: z.string(), why: z.string().nullable(), withdrawn: z.boolean(), changed: z.array(z.enum(AMENDABLE)), record: workRecordSchema })),
  /** Null where it may be taken back. */
  held: heldSchema.nullable(),
  /** What was written in the same step and is taken back with it, or stays; by its words. */
  beside: z.object({ goes: z.array(z.string()), stays: z.array(z.string()) }),
});
export type RecordView = z.infer<typeof recordViewSchema>;

/** All about one record, from what stands and from its entries; `held`: what keeps it from being taken back. */
export function recordView(facts: Facts, record: WorkRecord, versions: readonly RecordVersion[], held: Pick<RecordView, 'held' | 'beside'>, today: LocalDate): Result<RecordView> {
  const household = findHousehold(facts);
  if (!household.ok) return household;
  const car = must(facts.get(cars, record.car), 'car of a record');
  const writtenAt = facts.stamps(workRecords, car.id).get(record.id)?.firstAt ?? '';
  const earlier = earlierThings(facts, car.id).get(record.id) ?? null;
  const enteredAt = earlier?.entered ?? writtenAt;
  const entries = versionsThere(versions, earlier);
  const takenAt = facts.stamps(measurements, car.id);
  const seen = facts.ofCar(observations, car.id);
  const papersHeld = recordsWithPapers(facts, car.id).find((one) => one.id === record.id)?.papers ?? record.papers;
  return ok({
    today,
    currency: household.value.currency,
    car: { id: car.id, name: car.name, unit: car.unit },
    record,
    totalMinor: toldCost(record),
    enteredAt,
    written: writtenWhen(record, enteredAt),
    reading: record.reading === null ? null : facts.get(readings, record.reading),
    elements: elementsOf(record, earlier?.withheld ?? []),
    earlier: earlier === null ? null : { currency: earlier.currency, withheld: [...earlier.withheld] },
    lots: record.lotsUsed.map(({ lot, quantity }) => {
      const part = must(facts.get(lots, lot), 'lot of a record').part;
      return { lot, quantity, partName: facts.get(parts, part)?.name ?? part, unit: unitOfPart(facts, part) };
    }),
    noted: seen.filter((one) => one.record === record.id),
    settled: seen.filter((one) => one.closedBy === record.id && one.record !== record.id),
    measured: facts.ofCar(measurements, car.id).filter((one) => !one.dismissed && ((earlier === null && takenAt.get(one.id)?.firstAt === writtenAt) || (record.reading !== null && one.reading === record.reading))),
    papers: papersHeld.flatMap((id) => facts.get(papers, id) ?? []),
    versions: entries.map((one, at) => ({
      on: dateOfInstant(one.at), at: one.at, why: one.why, withdrawn: one.withdrawn, record: one.record,
      changed: at === 0 ? [] : [...changedFields(must(entries[at - 1], 'version before').record, one.record)],
    })),
    ...held,
  });
}

/** Those of an earlier keeper stand in this journal at the moment of taking in: their own moments were kept apart. */
function versionsThere(versions: readonly RecordVersion[], earlier: EarlierThing | null): readonly RecordVersion[] {
  if (earlier === null) return versions;
  return versions.map((one, at) => ({ ...one, at: (at === 0 ? earlier.entered : earlier.amended[at - 1]) ?? one.at }));
}

function elementsOf(record: WorkRecord, fields: readonly string[]): RecordView['elements'] {
  const { what, when, who, approved, withheld } = recordScore(record, fields);
  const entry = Object.entries({ what, when, who, approved }).map(([element, held]) => ({ of: 'entry' as const, element: element as 'what', held, withheld: withheld.includes(element as 'what') }));
  const looked = inspectionScore(record);
  if (looked === null) return entry;
  const { held: _held, ...elements } = looked;
  return [...entry, ...Object.entries(elements).map(([element, held]) => ({ of: 'inspection' as const, element: element as 'extent', held, withheld: element === 'inspector' && !held && ['approvedBy', 'reference'].some((field) => fields.includes(field)) }))];
}
