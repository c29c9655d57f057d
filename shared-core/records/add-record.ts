import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { addMeasurementRequest } from '../care/add-measurement.ts';
import { measurementSchema, measurementTaken } from '../care/measurement.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Car } from '../fleet/car.ts';
import { departures } from '../fleet/departure.ts';
import { findCar } from '../fleet/find-car.ts';
import { decideReading } from '../fleet/record-reading.ts';
import { recordReadingReply } from '../fleet/recorded-reading.ts';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { typedDistanceSchema } from '../units/distance-schema.ts';
import { measuredWith, settledBy } from './beside-record.ts';
import { checkUse } from './check-mixing.ts';
import { observationNoted, observationSchema } from './observation.ts';
import { papers } from './paper.ts';
import { checkLots } from './shelf-use.ts';
import { watchedLines } from './watched-lines.ts';
import { recordLineSchema, workRecorded, workRecords, workRecordSchema, type RecordLine, type WorkRecord } from './work-record.ts';

const shape = workRecordSchema.shape;
const line = recordLineSchema.shape;
const LONGEST_TITLE = 120;

const lineRequest = z.strictObject({
  item: line.item.default(null),
  /** A line on an item takes the item's name and kind of work unless given. */
  name: line.name.optional(),
  work: line.work.optional(),
  outcome: line.outcome.default('done'),
  minutes: line.minutes.default(null),
  note: line.note.default(''),
  /** When what is to be watched is looked at again; null: it is not noted. Three months on unless given. */
  recheckOn: dateSchema.nullable().optional(),
});
export type AddRecordLine = z.infer<typeof lineRequest>;

const measuredRequest = addMeasurementRequest.pick({ item: true, what: true, name: true, place: true, wheel: true, value: true, unit: true, fresh: true, gauge: true, note: true });

export const addRecordRequest = z.strictObject({
  id: shape.id.optional(),
  car: z.string().min(1).max(80),
  date: dateSchema.optional(),
  title: shape.title.optional(),
  place: shape.place.default('home'),
  placeName: shape.placeName.default(null),
  doneBy: shape.doneBy.default(null),
  approvedBy: shape.approvedBy.default(null),
  reference: shape.reference.default(null),
  vouched: shape.vouched,
  method: shape.method.default(null),
  reading: typedDistanceSchema.nullable().default(null),
  lines: z.array(lineRequest).min(1).max(100),
  costs: shape.costs.default([]),
  printedTotalMinor: shape.printedTotalMinor.default(null),
  lotsUsed: shape.lotsUsed.default([]),
  papers: shape.papers.default([]),
  note: shape.note.default(''),
  reconstructed: z.boolean().default(false),
  /** What was seen before and is settled by it. */
  settles: z.array(idSchema).max(40).default([]),
  /** What was measured in the course of it; the reading of the record goes with it. */
  measured: z.array(measuredRequest).max(60).default([]),
  /** The keeper was asked and is sure: parts that may not bear each other, or a lot past its date. */
  sure: z.boolean().default(false),
});
export type AddRecordRequest = z.infer<typeof addRecordRequest>;

/**
 * Records work done; a reading given with it is judged like any other and stands beside it. A line whose outcome is to be
 * watched is noted as an observation in the same step.
 */
export const addRecord = change({
  request: addRecordRequest,
  reply: z.object({ record: workRecordSchema, reading: recordReadingReply.nullable(), observations: z.array(observationSchema), measurements: z.array(measurementSchema) }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const reading = readingOf(facts, car.value, request, moment);
    if (!reading.ok) return reading;
    const record = composeRecord(facts, car.value, request, reading.value?.reply.reading.id ?? null, moment);
    if (!record.ok) return record;
    const used = checkUse(facts, { car: car.value.id, on: record.value.date, lots: record.value.lotsUsed.map((one) => one.lot), lines: record.value.lines, sure: request.sure });
    if (!used.ok) return used;
    const watched = watchedLines(record.value, request.lines, moment);
    if (!watched.ok) return watched;
    const settled = settledBy(facts, record.value, request.settles);
    if (!settled.ok) return settled;
    const measured = measuredWith(facts, car.value, record.value, request.measured, moment);
    if (!measured.ok) return measured;
    const entries: readonly NewEntry[] = [
      ...(reading.value?.entries ?? []), newEntry(workRecorded, record.value),
      ...[...watched.value, ...settled.value].map((seen) => newEntry(observationNoted, seen)), ...measured.value.map((one) => newEntry(measurementTaken, one)),
    ];
    return ok({ entries, reply: { record: record.value, reading: reading.value?.reply ?? null, observations: [...watched.value], measurements: [...measured.value] } });
  },
});

function readingOf(facts: Facts, car: Car, request: AddRecordRequest, moment: Moment) {
  if (request.reading === null) return ok(null);
  const { value, unit } = request.reading;
  const date = request.date ?? moment.today;
  return decideReading(facts, car, { car: car.id, value, unit, date, source: 'record', note: '', paper: request.papers[0] ?? null, sure: false, replaced: null }, moment);
}

function composeRecord(facts: Facts, car: Car, request: AddRecordRequest, reading: string | null, moment: Moment): Result<WorkRecord> {
  const lines = request.lines.map((asked) => lineOf(facts, asked));
  const refusedLine = lines.find((each) => !each.ok);
  if (refusedLine?.ok === false) return refusedLine;
  const whole = lines.flatMap((each) => (each.ok ? [each.value] : []));
  const date = request.date ?? moment.today;
  const { car: _car, title, sure: _sure, settles: _settles, measured: _measured, ...rest } = request;
  const record: WorkRecord = { ...rest, id: request.id ?? moment.newId(), car: car.id, date, reading, lines: whole, title: title ?? titleOf(whole) };
  if (facts.get(workRecords, record.id) !== null) return refuse('id-taken', { id: record.id }, ['id']);
  return checkRecord(facts, car, record, moment.today);
}

function lineOf(facts: Facts, { recheckOn: _recheckOn, ...asked }: AddRecordLine): Result<RecordLine> {
  const item = asked.item === null ? null : facts.get(serviceItems, asked.item);
  if (asked.item !== null && item === null) return refuse('unknown-item', { item: asked.item }, ['lines']);
  const name = asked.name ?? item?.name;
  if (name === undefined) return refuse('line-without-name', {}, ['lines']);
  return ok({ ...asked, name, work: asked.work ?? item?.work ?? 'replace' });
}

function titleOf(lines: readonly RecordLine[]): string {
  // Cut between characters, never inside one, and with no blank left at the end.
  return lines.map((each) => each.name).join(', ').slice(0, LONGEST_TITLE).replace(/[\ud800-\udbff]$/, '').trim();
}

/** What must hold of a record: no date ahead or before the car, items of its car, known papers, lots with enough left. */
export function checkRecord(facts: Facts, car: Car, record: WorkRecord, today: LocalDate): Result<WorkRecord> {
  if (record.date > today) return refuse('date-in-future', { date: record.date }, ['date']);
  if (car.firstRegistered !== null && record.date < car.firstRegistered) return refuse('before-registration', { date: record.date, registered: car.firstRegistered }, ['date']);
  const left = facts.get(departures, car.id);
  if (left !== null && record.date > left.on) return refuse('after-car-left', { car: car.name, date: record.date, on: left.on }, ['date']);
  const foreign = record.lines.find(({ item }) => item !== null && facts.get(serviceItems, item)?.car !== car.id);
  if (foreign !== undefined) return refuse('unknown-item', { item: foreign.item }, ['lines']);
  const loose = record.costs.findIndex(({ item }) => item !== undefined && !record.lines.some((line) => line.item === item));
  if (loose >= 0) return refuse('cost-of-no-line', { text: record.costs[loose]?.text ?? '' }, ['costs', loose, 'item']);
  const contrary = contraryLine(record.lines);
  if (contrary !== null) return refuse('item-twice-contrary', { item: record.lines[contrary]?.name ?? '' }, ['lines', contrary, 'outcome']);
  const strange = record.papers.find((paper) => facts.get(papers, paper) === null);
  if (strange !== undefined) return refuse('unknown-paper', { paper: strange }, ['papers']);
  return checkLots(facts, record);
}

/** The second of two lines on one item of which one is not done and the other is, or that say the same work came out otherwise. */
function contraryLine(lines: readonly RecordLine[]): number | null {
  const at = lines.findIndex((line, own) => line.item !== null && lines.slice(0, own).some((other) => other.item === line.item && contradict(other, line)));
  return at < 0 ? null : at;
}

function contradict(one: RecordLine, other: RecordLine): boolean {
  const [first, second] = [one, other].map(({ outcome }) => (outcome === 'acted' ? 'done' : outcome));
  return first !== second && (one.work === other.work || first === 'not-done' || second === 'not-done');
}
