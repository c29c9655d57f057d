import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import { carUse } from '../fleet/car-usage.ts';
import { findCar } from '../fleet/find-car.ts';
import { readings } from '../fleet/reading.ts';
import { decideReading } from '../fleet/record-reading.ts';
import { recordReadingReply } from '../fleet/recorded-reading.ts';
import { placeOn, wheelIn } from '../fleet/wheel-places.ts';
import { wheelMoves, wheels } from '../fleet/wheel.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { sayKind } from '../result/words/say.ts';
import { typedDistanceSchema } from '../units/distance-schema.ts';
import { fromTyped, type DistanceAsTyped, type Metres } from '../units/distance.ts';
import { measuredUnitSchema, typedValueSchema } from '../units/measured-value.ts';
import { checkMeasuredValue, checkMeasureName } from './check-measure.ts';
import { measurements, measurementSchema, measurementTaken, type Measurement } from './measurement.ts';
import { covers, type MeasureSubject } from './series-limits.ts';
import { serviceItems } from './service-item.ts';

const shape = measurementSchema.shape;

/** One measurement as it is asked to be added. */
export const addMeasurementRequest = z.strictObject({
  id: shape.id.optional(),
  car: z.string().min(1).max(80),
  /** Unless given, the one item of the car that is measured by it. */
  item: shape.item.default(null),
  what: shape.what,
  name: shape.name.default(null),
  /** Of tread on a known wheel it is where the wheel was; else it finds the wheel that was there. */
  place: shape.place.default(null),
  wheel: shape.wheel.default(null),
  date: dateSchema.optional(),
  value: typedValueSchema.shape.value,
  unit: measuredUnitSchema,
  fresh: shape.fresh.default(false),
  /** What the odometer showed; judged like any reading. */
  reading: typedDistanceSchema.nullable().default(null),
  /** A reading that was entered before. */
  readingId: shape.reading.default(null),
  /** The car's whole distance, where no odometer tells it. */
  distance: typedDistanceSchema.nullable().default(null),
  gauge: shape.gauge.default(null),
  source: shape.source.default('keeper'),
  paper: shape.paper.default(null),
  note: shape.note.default(''),
});
export type AddMeasurementRequest = z.infer<typeof addMeasurementRequest>;

/** Adds a measurement; a reading given with it is judged like any other and stands beside it. */
export const addMeasurement = change({
  request: addMeasurementRequest,
  reply: z.object({ measurement: measurementSchema, reading: recordReadingReply.nullable() }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const read = readingWith(facts, car.value, request, moment);
    if (!read.ok) return read;
    const measurement = composeMeasurement(facts, car.value, request, read.value?.reply.reading.id ?? request.readingId, moment);
    if (!measurement.ok) return measurement;
    const entries = [...(read.value?.entries ?? []), newEntry(measurementTaken, measurement.value)];
    return ok({ entries, reply: { measurement: measurement.value, reading: read.value?.reply ?? null } });
  },
});

type Read = Pick<AddMeasurementRequest, 'reading' | 'readingId' | 'distance' | 'date' | 'source' | 'paper'>;

/** The reading given with a measurement, judged; null where there is none. Refused where the odometer is told twice. */
export function readingWith(facts: Facts, car: Car, { reading, readingId, distance, date, source, paper }: Read, moment: Moment) {
  if ([reading, readingId, distance].filter((one) => one !== null).length > 1) return refuse('two-odometers', {}, ['reading']);
  if (reading === null) return ok(null);
  return decideReading(facts, car, { ...reading, car: car.id, date: date ?? moment.today, source, note: '', paper, sure: false, replaced: null }, moment);
}

/** The measurement that is asked for, where all of it holds; `reading`: the id of the reading that goes with it. */
export function composeMeasurement(facts: Facts, car: Car, request: AddMeasurementRequest, reading: string | null, moment: Moment): Result<Measurement> {
  const { what, name, fresh, gauge, source, paper, note, date = moment.today } = request;
  const typed = { value: request.value, unit: request.unit };
  const earlier = request.readingId === null ? ok(null) : checkEarlierReading(facts, car, request.readingId, date);
  if (!earlier.ok) return earlier;
  const where = whereOf(facts, car, request, date);
  if (!where.ok) return where;
  const item = request.item ?? itemMeasuredBy(facts, car, { what, name, ...where.value });
  const metres = request.distance === null ? ok(null) : wholeMetres(facts, car, request.distance, date);
  if (!metres.ok) return metres;
  const id = request.id ?? moment.newId();
  if (facts.get(measurements, id) !== null) return refuse('id-taken', { id }, ['id']);
  return checkMeasurement(facts, car, { id, car: car.id, item, what, name, ...where.value, date, typed, value: 0, reading, metres: metres.value, fresh, gauge, source, paper, note, dismissed: false }, moment.today);
}

/** The item of a car that is measured by something; null where none is, or several. */
function itemMeasuredBy(facts: Facts, car: Car, subject: MeasureSubject): string | null {
  const [item, ...others] = facts.ofCar(serviceItems, car.id).filter(({ measure }) => measure !== null && covers(measure, subject));
  return item === undefined || others.length > 0 ? null : item.id;
}

/** Tread goes with its wheel: named, or found by its place; a wheel that was away has no place. */
function whereOf(facts: Facts, car: Car, { what, place, wheel }: AddMeasurementRequest, date: LocalDate): Result<Pick<Measurement, 'place' | 'wheel'>> {
  const moves = facts.ofCar(wheelMoves, car.id);
  if (wheel === null) {
    const found = what !== 'tread' || place === null || place === 'front' || place === 'rear' ? null : wheelIn(moves, place, date);
    return ok({ place, wheel: found });
  }
  if (what !== 'tread') return refuse('only-tread-has-wheel', {}, ['wheel']);
  if (facts.get(wheels, wheel)?.car !== car.id) return refuse('unknown-wheel', { wheel }, ['wheel']);
  const was = placeOn(moves, wheel, date);
  if (place !== null && was !== null && was !== place) return refuse('wheel-elsewhere', { place: sayKind('at', place), date, was: sayKind('at', was) }, ['place']);
  return ok({ wheel, place: was === 'off' ? null : (was ?? place) });
}

/** A distance said must fit between the readings before and after it. */
function wholeMetres(facts: Facts, car: Car, typed: DistanceAsTyped, date: LocalDate): Result<Metres> {
  const metres = fromTyped(typed);
  if (!metres.ok) return metres;
  const { points } = carUse(facts, car);
  const before = points.findLast((point) => point.date <= date);
  const after = points.find((point) => point.date >= date);
  const fits = (before === undefined || before.metres <= metres.value) && (after === undefined || after.metres >= metres.value);
  return fits ? metres : refuse('distance-does-not-fit', { value: typed.value, unit: typed.unit, date }, ['distance']);
}

/** What must hold of a measurement: its day, its names, what it refers to, its value; answers it with the canonical value. */
export function checkMeasurement(facts: Facts, car: Car, one: Measurement, today: LocalDate): Result<Measurement> {
  if (one.date > today) return refuse('date-in-future', { date: one.date }, ['date']);
  if (car.firstRegistered !== null && one.date < car.firstRegistered) return refuse('before-registration', { date: one.date, registered: car.firstRegistered }, ['date']);
  if (one.item !== null && facts.get(serviceItems, one.item)?.car !== car.id) return refuse('unknown-item', { item: one.item }, ['item']);
  const named = checkMeasureName(one);
  if (!named.ok) return named;
  const value = checkMeasuredValue(facts, car.id, one, one.typed);
  return value.ok ? ok({ ...one, value: value.value }) : value;
}

/** A reading entered before must be of this car and of the day. */
function checkEarlierReading(facts: Facts, car: Car, reading: string, date: LocalDate): Result<null> {
  const found = facts.get(readings, reading);
  if (found === null || found.car !== car.id) return refuse('unknown-reading', { reading }, ['readingId']);
  return found.date === date ? ok(null) : refuse('reading-of-another-day', { read: found.date, date }, ['readingId']);
}
