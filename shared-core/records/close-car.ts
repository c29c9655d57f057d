import type { LocalDate } from '../calendar/local-date.ts';
import { composeMeasurement } from '../care/add-measurement.ts';
import { measurementTaken, type Measurement } from '../care/measurement.ts';
import type { Renewal } from '../care/renewal.ts';
import { renewObligation } from '../care/set-obligation.ts';
import { findCar } from '../fleet/find-car.ts';
import type { RecordReadingReply } from '../fleet/recorded-reading.ts';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import type { Decision, Moment } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { standingPlaces } from '../sessions/place.ts';
import type { Session } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { finds } from '../work/doing.ts';
import { composeFollowUp, followUpSet, type FollowUp } from '../work/follow-up.ts';
import { valuesOf } from '../work/read-at-step.ts';
import { photosOf } from '../work/take-photo.ts';
import { addRecord } from './add-record.ts';
import type { CloseCar } from './close-request.ts';
import { observationNoted, observations, type Observation } from './observation.ts';
import type { WorkRecord } from './work-record.ts';

/** What closing a session comes to on one car. */
export interface ClosedCar {
  readonly entries: readonly NewEntry[];
  /** Null where nothing of it was done. */
  readonly record: WorkRecord | null;
  readonly reading: RecordReadingReply | null;
  readonly measurements: readonly Measurement[];
  readonly observations: readonly Observation[];
  readonly renewals: readonly Renewal[];
  readonly followUps: readonly FollowUp[];
  /** The keys of the tasks that were done. */
  readonly done: readonly string[];
}

interface Closing {
  readonly session: Session;
  readonly car: CloseCar;
  readonly date: LocalDate;
  readonly sure: boolean;
}

/** Closes a session on one car. */
export function closeCar(facts: Facts, closing: Closing, moment: Moment): Result<ClosedCar> {
  const { car, date } = closing;
  const recorded = recordOf(facts, closing, moment);
  if (!recorded.ok) return recorded;
  const record = recorded.value?.reply.record ?? null;
  const measured = measuredOf(facts, closing, record?.reading ?? null, moment);
  if (!measured.ok) return measured;
  const met = metOf(facts, closing, moment);
  if (!met.ok) return met;
  const seen = record === null ? [] : foundOf(facts, closing, record.id);
  const followUps = car.followUps.map(({ item, ...rule }) => composeFollowUp(rule, { id: moment.newId(), car: car.car, item, session: closing.session.id, madeOn: date }));
  return ok({
    entries: [
      ...(recorded.value?.entries ?? []), ...measured.value.map((one) => newEntry(measurementTaken, one)), ...met.value.flatMap((one) => one.entries),
      ...seen.map((one) => newEntry(observationNoted, one)), ...followUps.map((one) => newEntry(followUpSet, one)),
    ],
    record,
    reading: recorded.value?.reply.reading ?? null,
    measurements: measured.value,
    observations: [...(recorded.value?.reply.observations ?? []), ...seen],
    renewals: met.value.map((one) => one.reply.renewal),
    followUps,
    done: [
      ...car.lines.flatMap((line) => (line.item === null || line.outcome === 'not-done' ? [] : [taskKey({ kind: 'item', id: line.item })])),
      ...car.met.map((one) => taskKey({ kind: 'obligation', id: one.obligation })),
    ],
  });
}

type Recorded = Extract<ReturnType<typeof addRecord.decide>, { readonly ok: true }>['value'];

/** The record of the car, with its reading and photographs; none where no line says that something was done. */
function recordOf(facts: Facts, { session, car, date, sure }: Closing, moment: Moment): Result<Recorded | null> {
  if (car.lines.every((line) => line.outcome === 'not-done')) {
    const left = [car.reading !== null && 'reading', car.costs.length > 0 && 'costs', car.lotsUsed.length > 0 && 'lotsUsed', car.printedTotalMinor !== null && 'printedTotalMinor'].find((one) => one !== false);
    return left === undefined ? ok(null) : refuse('nothing-done-on-car', {}, [left]);
  }
  const place = standingPlaces(facts).find((one) => one.place.id === session.place)?.place;
  const { car: id, reading, lines, doneBy, approvedBy, reference, method, costs, printedTotalMinor, lotsUsed, note } = car;
  const papers = [...new Set([...car.papers, ...photosOf(facts, session.id).flatMap((one) => (one.car === id ? [one.paper] : []))])];
  const where = { place: place?.kind ?? 'home', placeName: place?.kind === 'garage' ? place.name : null } as const;
  return addRecord.decide(facts, { car: id, date, ...where, reading, lines, doneBy, approvedBy, reference, method, costs, printedTotalMinor, lotsUsed, papers, note, reconstructed: false, sure }, moment);
}

/** What was read at the steps and is to be kept as measurements, with the record's reading. */
function measuredOf(facts: Facts, { session, car, date }: Closing, reading: string | null, moment: Moment): Result<readonly Measurement[]> {
  const found = findCar(facts, car.car);
  if (!found.ok) return found;
  const read = new Map(valuesOf(facts, session.id).map((one) => [one.id, one]));
  const taken: Measurement[] = [];
  for (const [at, { value, fresh }] of car.measured.entries()) {
    const one = read.get(value);
    if (one === undefined || one.car !== car.car || one.read.kind !== 'measured') return refuse('unknown-step-value', {}, ['measured', at]);
    const { what, name, place, typed } = one.read;
    const whole = composeMeasurement(facts, found.value, { car: car.car, item: null, what, name, place, wheel: null, date, value: typed.value, unit: typed.unit, fresh, reading: null, readingId: null, distance: null, gauge: null, source: 'keeper', paper: null, note: '' }, reading, moment);
    if (!whole.ok) return { ok: false, refusal: { ...whole.refusal, path: ['measured', at] } };
    taken.push(whole.value);
  }
  return ok(taken);
}

type Renewed = Extract<ReturnType<typeof renewObligation.decide>, { readonly ok: true }>['value'] & Decision<unknown>;

function metOf(facts: Facts, { car, date }: Closing, moment: Moment): Result<readonly Renewed[]> {
  const renewed: Renewed[] = [];
  for (const [at, one] of car.met.entries()) {
    const decided = renewObligation.decide(facts, { ...one, on: date }, moment);
    if (!decided.ok) return { ok: false, refusal: { ...decided.refusal, path: ['met', at, ...(decided.refusal.path ?? [])] } };
    renewed.push(decided.value);
  }
  return ok(renewed);
}

/** What was found while working, tied to the record in which it was seen. */
function foundOf(facts: Facts, { session, car }: Closing, record: string): readonly Observation[] {
  const found = facts.all(finds).filter((one) => one.session === session.id && one.car === car.car);
  return found.flatMap((one) => facts.get(observations, one.id) ?? []).filter((one) => one.record === null).map((one) => ({ ...one, record }));
}
