import { earliest, type LocalDate } from '../calendar/local-date.ts';
import { composeMeasurement } from '../care/add-measurement.ts';
import { measurementTaken, type Measurement } from '../care/measurement.ts';
import type { Renewal } from '../care/renewal.ts';
import { renewObligation } from '../care/set-obligation.ts';
import { cars } from '../fleet/car.ts';
import { findCar } from '../fleet/find-car.ts';
import type { RecordReadingReply } from '../fleet/recorded-reading.ts';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import type { Decision, Moment } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { standingPlaces } from '../sessions/place.ts';
import type { Session } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { checkFollowUp } from '../work/add-follow-up.ts';
import { finds } from '../work/doing.ts';
import { composeFollowUp, followUpSet, type FollowUp } from '../work/follow-up.ts';
import { dayOfValue, valuesOf } from '../work/read-at-step.ts';
import { MOST_PAPERS, photosOf } from '../work/take-photo.ts';
import { addRecord } from './add-record.ts';
import type { CloseCar } from './close-request.ts';
import { closeWithoutRecord } from './close-without-record.ts';
import { observationNoted, observations, type Observation } from './observation.ts';
import { photosSetAside, photosToCars } from './photos-to-cars.ts';
import type { WorkRecord } from './work-record.ts';

/** So many papers a renewal holds. */
const MOST_OF_RENEWAL = 10;

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
  /** What was typed and no record holds. */
  readonly note: string;
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
  const nothing = car.lines.every((line) => line.outcome === 'not-done');
  const recorded = nothing ? ok(null) : recordOf(facts, closing, moment);
  if (!recorded.ok) return recorded;
  const without = nothing ? closeWithoutRecord(facts, car, date, moment) : ok(null);
  if (!without.ok) return without;
  const record = recorded.value?.reply.record ?? null;
  const reading = recorded.value?.reply.reading ?? without.value?.reading ?? null;
  const measured = measuredOf(facts, closing, reading?.reading.id ?? null, moment);
  if (!measured.ok) return measured;
  const met = metOf(facts, closing, nothing, moment);
  if (!met.ok) return met;
  const seen = record === null ? [] : foundOf(facts, closing, record.id);
  const followUps = followUpsOf(facts, closing, moment);
  if (!followUps.ok) return followUps;
  const homeless = record === null ? homelessPhotos(facts, closing, met.value.flatMap((one) => one.reply.renewal.papers), moment) : ok([]);
  if (!homeless.ok) return homeless;
  return ok({
    entries: [
      ...(recorded.value?.entries ?? without.value?.entries ?? []), ...measured.value.map((one) => newEntry(measurementTaken, one)), ...met.value.flatMap((one) => one.entries),
      ...seen.map((one) => newEntry(observationNoted, one)), ...followUps.value.map((one) => newEntry(followUpSet, one)), ...homeless.value,
    ],
    record,
    reading,
    measurements: measured.value,
    observations: [...(recorded.value?.reply.observations ?? []), ...seen],
    renewals: met.value.map((one) => one.reply.renewal),
    followUps: followUps.value,
    note: without.value?.note ?? '',
    done: [
      ...car.lines.flatMap((line) => (line.item === null || line.outcome === 'not-done' ? [] : [taskKey({ kind: 'item', id: line.item })])),
      ...car.met.map((one) => taskKey({ kind: 'obligation', id: one.obligation })),
    ],
  });
}

type Recorded = Extract<ReturnType<typeof addRecord.decide>, { readonly ok: true }>['value'];

/** The record of the car, with its reading and photographs. */
function recordOf(facts: Facts, closing: Closing, moment: Moment): Result<Recorded> {
  const { session, car, date, sure } = closing;
  const place = standingPlaces(facts).find((one) => one.place.id === session.place)?.place;
  const { car: id, reading, doneBy, approvedBy, reference, method, costs, printedTotalMinor, lotsUsed, note } = car;
  const papers = [...new Set([...car.papers, ...photoPapers(facts, closing)])];
  if (papers.length > MOST_PAPERS) return refuse('papers-too-many', { most: MOST_PAPERS, over: papers.length - MOST_PAPERS }, ['papers']);
  // What was found at a step is an observation already: the line that says to watch it makes no second one.
  const found = new Set(facts.all(finds).flatMap((one) => (one.session === session.id && one.at !== null && facts.get(observations, one.id)?.closedBy === null ? [one.at.task] : [])));
  const lines = car.lines.map((line) => (line.outcome === 'watch' && line.recheckOn === undefined && line.item !== null && found.has(taskKey({ kind: 'item', id: line.item })) ? { ...line, recheckOn: null } : line));
  const where = { place: place?.kind ?? 'home', placeName: place?.kind === 'garage' ? place.name : null } as const;
  return addRecord.decide(facts, { car: id, date, ...where, reading, lines, doneBy, approvedBy, reference, method, costs, printedTotalMinor, lotsUsed, papers, note, reconstructed: false, settles: [], measured: [], sure }, moment);
}

function photoPapers(facts: Facts, { session, car }: Closing): readonly string[] {
  return photosOf(facts, session.id).flatMap((one) => (one.car === car.car ? [one.paper] : []));
}

/** Photographs of a car on which nothing was done go with no record: the keeper says whether the car's papers take them. */
function homelessPhotos(facts: Facts, { session, car }: Closing, taken: readonly string[], moment: Moment): Result<readonly NewEntry[]> {
  const photos = photosOf(facts, session.id).filter((one) => one.car === car.car && !taken.includes(one.paper));
  if (photos.length === 0) return ok([]);
  // A renewal took as many as it holds: the others are of the same work.
  if (car.photos === undefined && taken.length === 0) return refuse('photos-without-record', { n: photos.length, car: facts.get(cars, car.car)?.name ?? car.car }, ['photos']);
  return ok(car.photos !== 'set-aside' ? photosToCars(facts, photos, moment) : photosSetAside(facts, photos, moment));
}

/** What was read at the steps and is to be kept as measurements, each of the day on which it was read; with the reading of that day. */
function measuredOf(facts: Facts, { session, car, date }: Closing, reading: string | null, moment: Moment): Result<readonly Measurement[]> {
  const found = findCar(facts, car.car);
  if (!found.ok) return found;
  const values = new Map(valuesOf(facts, session.id).map((one) => [one.id, one]));
  const taken: Measurement[] = [];
  for (const [at, { value, fresh }] of car.measured.entries()) {
    const one = values.get(value);
    if (one === undefined || one.car !== car.car || one.read.kind !== 'measured') return refuse('unknown-step-value', {}, ['measured', at]);
    const { what, name, place, typed } = one.read;
    const on = earliest(dayOfValue(one), date) ?? date;
    const whole = composeMeasurement(facts, found.value, { car: car.car, item: null, what, name, place, wheel: null, date: on, value: typed.value, unit: typed.unit, fresh, reading: null, readingId: null, distance: null, gauge: null, source: 'keeper', paper: null, note: '' }, on === date ? reading : null, moment);
    if (!whole.ok) return { ok: false, refusal: { ...whole.refusal, path: ['measured', at] } };
    taken.push(whole.value);
  }
  return ok(taken);
}

/** The follow-ups, each as sound as one that is added by itself. */
function followUpsOf(facts: Facts, { session, car, date }: Closing, moment: Moment): Result<readonly FollowUp[]> {
  const found = findCar(facts, car.car);
  if (!found.ok) return found;
  const composed: FollowUp[] = [];
  for (const [at, { item, ...rule }] of car.followUps.entries()) {
    const one = composeFollowUp(rule, { id: moment.newId(), car: car.car, item, session: session.id, madeOn: date });
    const sound = checkFollowUp(facts, found.value, one, moment.today);
    if (!sound.ok) return { ok: false, refusal: { ...sound.refusal, path: ['followUps', at, ...(sound.refusal.path ?? []).map((part) => (part === 'after' ? 'distance' : part))] } };
    composed.push(one);
  }
  return ok(composed);
}

type Renewed = Extract<ReturnType<typeof renewObligation.decide>, { readonly ok: true }>['value'] & Decision<unknown>;

/** The obligations met. Where no record holds them, reference and papers go with the renewals; photographs as far as one holds them. */
function metOf(facts: Facts, closing: Closing, alone: boolean, moment: Moment): Result<readonly Renewed[]> {
  const { car, date } = closing;
  const renewed: Renewed[] = [];
  for (const [at, one] of car.met.entries()) {
    const own = alone && at === 0 ? [...new Set([...one.papers, ...car.papers])] : one.papers;
    if (own.length > MOST_OF_RENEWAL) return refuse('papers-too-many', { most: MOST_OF_RENEWAL, over: own.length - MOST_OF_RENEWAL }, ['papers']);
    const papers = alone && at === 0 ? [...new Set([...own, ...photoPapers(facts, closing)])].slice(0, MOST_OF_RENEWAL) : own;
    const decided = renewObligation.decide(facts, { ...one, reference: one.reference ?? (alone ? car.reference : null), papers, on: date }, moment);
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
