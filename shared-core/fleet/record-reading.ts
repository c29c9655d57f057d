import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { distanceUnitSchema, typedDistanceSchema } from '../units/distance-schema.ts';
import { fromTyped, type DistanceAsTyped } from '../units/distance.ts';
import type { Car } from './car.ts';
import { carUse } from './car-usage.ts';
import { instrumentOn } from './continuous-distance.ts';
import { findCar } from './find-car.ts';
import { instruments } from './instrument.ts';
import { judgeCarReading } from './judge-car-reading.ts';
import { notAboveLastShown } from './last-shown.ts';
import { readingRecorded, readings, readingSchema, readingSourceSchema, type Reading } from './reading.ts';
import { recordReadingReply, type RecordReadingReply } from './recorded-reading.ts';
import { replaceInstrument } from './replace-instrument.ts';
import { unitShownOn } from './unit-shown.ts';

const replacedSchema = z.strictObject({
  /** What the old instrument last showed; unknown: the car's distance is estimated. */
  lastShown: typedDistanceSchema.nullable().default(null),
  /** Readings of later days, taken to be of the old one until now, are of the new one. */
  laterOfNew: z.boolean().default(false),
});

export const recordReadingRequest = z.strictObject({
  id: idSchema.optional(),
  car: z.string().min(1).max(80),
  value: z.number(),
  unit: distanceUnitSchema.optional(),
  date: dateSchema.optional(),
  source: readingSourceSchema.default('keeper'),
  note: readingSchema.shape.note.default(''),
  paper: sha256Schema.nullable().default(null),
  /** The keeper says that a value that looks wrong is right. */
  sure: z.boolean().default(false),
  /** The instrument was replaced: this is the first value of the new one. */
  replaced: replacedSchema.nullable().default(null),
});
type Request = z.infer<typeof recordReadingRequest>;

/** Records a reading: judged first, a doubtful one is kept, set aside and asked about. */
export const recordReading = change({
  request: recordReadingRequest,
  reply: recordReadingReply,
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const decided = decideReading(facts, car.value, request, moment);
    return decided.ok ? ok({ entries: decided.value.entries, reply: decided.value.reply }) : decided;
  },
});

/** The entries and the reply for a reading of a known car. */
export function decideReading(facts: Facts, car: Car, request: Request, moment: Moment): Result<{ readonly entries: readonly NewEntry[]; readonly reply: RecordReadingReply }> {
  const date = request.date ?? moment.today;
  const typed: DistanceAsTyped = { value: request.value, unit: request.unit ?? unitShownOn(facts, car, date) };
  const shown = fromTyped(typed);
  if (!shown.ok) return refuse('not-a-distance', { value: String(request.value) }, ['value']);
  const sound = checkDate(car, date, moment.today);
  if (!sound.ok) return sound;
  const id = request.id ?? moment.newId();
  if (facts.get(readings, id) !== null) return refuse('id-taken', { id }, ['id']);
  const reading = { id, car: car.id, date, typed, shown: shown.value, source: request.source, paper: request.paper, note: request.note, sure: request.sure };
  if (request.replaced !== null) return replaceInstrument(facts, car, reading, request.replaced, moment);
  const possible = reading.sure ? notAboveLastShown(facts, car, reading) : ok(null);
  if (!possible.ok) return possible;
  return ok(judged(facts, car, { ...reading, instrument: instrumentOn(facts.ofCar(instruments, car.id), date)?.id ?? null }));
}

function judged(facts: Facts, car: Car, reading: Omit<Reading, 'standing' | 'doubt'>): { entries: readonly NewEntry[]; reply: RecordReadingReply } {
  const verdict = judgeCarReading(carUse(facts, car), reading);
  const standing = verdict.doubt === null || reading.sure ? 'accepted' : 'set-aside';
  const whole: Reading = { ...reading, standing, doubt: verdict.doubt };
  const repairs = standing === 'accepted' ? [] : verdict.repairs.map((repair) => repair.value);
  return { entries: [newEntry(readingRecorded, whole)], reply: { reading: whole, state: standing, code: standing === 'accepted' ? null : must(verdict.doubt, 'doubt'), repairs } };
}

function checkDate(car: Car, date: LocalDate, today: LocalDate): Result<LocalDate> {
  if (date > today) return refuse('date-in-future', { date }, ['date']);
  if (car.firstRegistered !== null && date < car.firstRegistered) return refuse('before-registration', { date, registered: car.firstRegistered }, ['date']);
  return ok(date);
}
