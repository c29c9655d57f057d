import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { serviceItems, serviceItemSchema, type ServiceItem } from '../care/service-item.ts';
import { changeItem } from '../care/set-item.ts';
import { cars, type Car } from '../fleet/car.ts';
import { findCar } from '../fleet/find-car.ts';
import { decideReading } from '../fleet/record-reading.ts';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Decision, type Moment } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { parseRequest } from '../result/parse-request.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import type { DistanceAsTyped } from '../units/distance.ts';
import { typedDistanceSchema } from '../units/distance-schema.ts';
import { addRecord, addRecordRequest } from './add-record.ts';
import { amendRecord } from './amend-record.ts';
import { intakeAnswered, intakeAnswerKindSchema, intakeAnswers, intakeAnswerSchema, type IntakeAnswer, type IntakeAnswerKind } from './intake-answer.ts';
import { workAmended } from './work-amended.ts';
import { workRecords, workRecordSchema, type WorkRecord } from './work-record.ts';

const shape = workRecordSchema.shape;

const answerRequest = z.strictObject({
  car: z.string().min(1).max(80),
  item: serviceItemSchema.shape.id,
  answer: intakeAnswerKindSchema,
  /** When it was done, for what is proven or said. */
  date: dateSchema.nullable().default(null),
  /** What the odometer showed then, where it is known. */
  reading: typedDistanceSchema.nullable().default(null),
  papers: shape.papers.default([]),
  place: shape.place.default('garage'),
  placeName: shape.placeName.default(null),
  doneBy: shape.doneBy.default(null),
  note: shape.note.default(''),
});
type AnswerRequest = z.infer<typeof answerRequest>;

/** What answering comes to beside the answer itself. */
interface Meaning {
  readonly entries: readonly NewEntry[];
  readonly record: WorkRecord | null;
  readonly item: ServiceItem;
}

/**
 * Answers what is known of one item and writes what that means: what is proven or said becomes a work record marked as
 * reconstructed, with its paper or without; the rest becomes the item's history. An answer given anew corrects the record
 * that the one before it made.
 */
export const answerIntake = change({
  request: answerRequest,
  reply: z.object({ answer: intakeAnswerSchema, record: workRecordSchema.nullable(), item: serviceItemSchema }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const item = facts.get(serviceItems, request.item);
    if (item === null || item.car !== car.value.id) return refuse('unknown-item', { item: request.item }, ['item']);
    const sound = checkAnswer(car.value, request);
    if (!sound.ok) return sound;
    const before = facts.ofCar(intakeAnswers, car.value.id).find((one) => one.item === item.id) ?? null;
    const meant = isDone(request.answer) ? doneMeans(facts, item, request, before, moment) : notDoneMeans(facts, item, request.answer, before, moment);
    return meant.ok ? ok(decisionOf(request, meant.value, before, moment)) : meant;
  },
});

function isDone(answer: IntakeAnswerKind): answer is 'proven' | 'said' {
  return answer === 'proven' || answer === 'said';
}

function checkAnswer(car: Car, { answer, date, reading, papers }: AnswerRequest): Result<null> {
  if (isDone(answer) && date === null) return refuse('answer-needs-date', {}, ['date']);
  if (!isDone(answer) && (date !== null || reading !== null || papers.length > 0)) return refuse('answer-takes-no-date', {}, ['date']);
  if (answer === 'proven' && papers.length === 0) return refuse('proven-needs-paper', {}, ['papers']);
  if (answer === 'said' && papers.length > 0) return refuse('said-has-paper', {}, ['papers']);
  if (answer === 'from-purchase' && car.keptSince === null) return refuse('purchase-not-known', { car: car.name }, ['answer']);
  return ok(null);
}

function doneMeans(facts: Facts, item: ServiceItem, request: AnswerRequest, before: IntakeAnswer | null, moment: Moment): Result<Meaning> {
  const recorded = before?.record == null ? null : facts.get(workRecords, before.record);
  if (recorded !== null) return amended(facts, item, recorded, request, moment);
  const { date, reading, papers, place, placeName, doneBy, note } = request;
  const outcome = item.work === 'check' ? 'good' : 'done';
  const asked = parseRequest(addRecordRequest, { car: item.car, date, reading, papers, place, placeName, doneBy, note, lines: [{ item: item.id, outcome }], reconstructed: true });
  if (!asked.ok) return asked;
  const decided = addRecord.decide(facts, asked.value, moment);
  return decided.ok ? ok({ entries: decided.value.entries, record: decided.value.reply.record, item }) : decided;
}

const ANSWERED_ANEW = 'Answered anew at the intake.';

/** The record of the answer before, as it should read now. A reading is taken once: where the work has none yet. */
function amended(facts: Facts, item: ServiceItem, recorded: WorkRecord, request: AnswerRequest, moment: Moment): Result<Meaning> {
  if (request.reading !== null && recorded.reading !== null) return refuse('reading-given-before', {}, ['reading']);
  const { papers, place, placeName, doneBy, note } = request;
  const date = request.date ?? recorded.date;
  const outcome = item.work === 'check' ? 'good' as const : 'done' as const;
  const lines = recorded.lines.map((line) => ({ ...line, outcome }));
  const meant = meaningOf(amendRecord.decide(facts, { id: recorded.id, date, papers, place, placeName, doneBy, note, lines, why: ANSWERED_ANEW }, moment), item);
  return meant.ok && request.reading !== null ? withReading(facts, must(meant.value.record, 'the amended record'), { ...request, date, reading: request.reading }, item, moment) : meant;
}

/** The record as it should read now, with the reading that it had not. */
function withReading(facts: Facts, record: WorkRecord, { date, reading, papers }: AnswerRequest & { readonly date: LocalDate; readonly reading: DistanceAsTyped }, item: ServiceItem, moment: Moment): Result<Meaning> {
  const car = must(facts.get(cars, record.car), 'car of a record');
  const read = decideReading(facts, car, { ...reading, car: car.id, date, source: 'record', note: '', paper: papers[0] ?? null, sure: false, replaced: null }, moment);
  if (!read.ok) return read;
  const whole: WorkRecord = { ...record, reading: read.value.reply.reading.id };
  return ok({ entries: [...read.value.entries, newEntry(workAmended, { ...whole, why: ANSWERED_ANEW })], record: whole, item });
}

function notDoneMeans(facts: Facts, item: ServiceItem, answer: Exclude<IntakeAnswerKind, 'proven' | 'said'>, before: IntakeAnswer | null, moment: Moment): Result<Meaning> {
  const changed = changeItem.decide(facts, { id: item.id, history: answer }, moment);
  if (!changed.ok) return changed;
  const recorded = before?.record == null ? null : facts.get(workRecords, before.record);
  const { entries, reply } = changed.value;
  if (recorded === null) return ok({ entries, record: null, item: reply.item });
  const lines = recorded.lines.map((line) => ({ ...line, outcome: 'not-done' as const }));
  const withdrawn = meaningOf(amendRecord.decide(facts, { id: recorded.id, lines, why: ANSWERED_ANEW }, moment), reply.item);
  return withdrawn.ok ? ok({ ...withdrawn.value, entries: [...entries, ...withdrawn.value.entries] }) : withdrawn;
}

function meaningOf(decided: Result<Decision<{ readonly record: WorkRecord }>>, item: ServiceItem): Result<Meaning> {
  return decided.ok ? ok({ entries: decided.value.entries, record: decided.value.reply.record, item }) : decided;
}

/** The answer keeps its id and its record, so that the next one finds both. */
function decisionOf(request: AnswerRequest, meant: Meaning, before: IntakeAnswer | null, moment: Moment) {
  const answer: IntakeAnswer = { id: before?.id ?? moment.newId(), car: meant.item.car, item: meant.item.id, answer: request.answer, on: moment.today, record: meant.record?.id ?? null };
  return { entries: [...meant.entries, newEntry(intakeAnswered, answer)], reply: { answer, record: meant.record, item: meant.item } };
}
