import { z } from 'zod';
import { newEntry, type NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change, type Moment } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { distanceUnitSchema, typedDistanceSchema } from '../units/distance-schema.ts';
import { fromTyped } from '../units/distance.ts';
import { cars, type Car } from './car.ts';
import { carUse } from './car-usage.ts';
import { instrumentOn } from './continuous-distance.ts';
import { instruments } from './instrument.ts';
import { judgeCarReading } from './judge-car-reading.ts';
import { notAboveLastShown } from './last-shown.ts';
import { readingRecorded, readings, readingSchema, type Reading } from './reading.ts';
import { decideReading } from './record-reading.ts';
import { releaseReadings, withEntries } from './release-readings.ts';
import { replaceInstrument } from './replace-instrument.ts';

const settleRequest = z.strictObject({
  reading: idSchema,
  /**
   * `right`: it stands as typed. `wrong`: it counts for nothing. `corrected`: another value or unit was meant. `replaced`: it
   * is the first of a new instrument. `other-wrong`: the accepted reading that it contradicts is the wrong one.
   */
  verdict: z.enum(['right', 'wrong', 'corrected', 'replaced', 'other-wrong']),
  /** What was meant, in the unit typed: by this reading with `corrected`, by the other one with `other-wrong`. */
  value: z.number().optional(),
  /** The unit meant, where it is not the one typed; with `corrected` and `replaced`. */
  unit: distanceUnitSchema.optional(),
  /** What the old instrument last showed; with `replaced`. Unknown: the car's distance is estimated. */
  lastShown: typedDistanceSchema.nullable().default(null),
  /** Readings of later days, taken to be of the old one until now, are of the new one; with `replaced`. */
  laterOfNew: z.boolean().default(false),
  /** The keeper says that a last value, or a corrected one, that looks wrong is right. */
  sure: z.boolean().default(false),
});
type Request = z.output<typeof settleRequest>;

/** Answers the question about a doubtful reading; what was typed first stays in the journal. */
export const settleReading = change({
  request: settleRequest,
  reply: z.object({
    reading: readingSchema,
    /** The accepted reading that proved wrong; null with any verdict but `other-wrong`. */
    other: readingSchema.nullable(),
    /** Other readings that were set aside and fit now: they are accepted with it. */
    released: z.array(readingSchema),
  }),
  decide: (facts, request, moment) => {
    const found = facts.get(readings, request.reading);
    if (found === null) return refuse('unknown-reading', { reading: request.reading }, ['reading']);
    if (found.standing !== 'set-aside') return refuse('reading-not-in-doubt', {}, ['reading']);
    const car = must(facts.get(cars, found.car), 'car of a reading');
    const settled = SETTLED_BY[request.verdict]({ facts, car, found, request, moment });
    if (!settled.ok) return settled;
    const { entries, reading, other } = settled.value;
    // What counts for nothing before and after changes nothing for others.
    const rest = request.verdict === 'wrong' ? { entries: [], released: [] } : releaseReadings(facts, car, entries);
    return ok({ entries: [...entries, ...rest.entries], reply: { reading, other, released: [...rest.released] } });
  },
});

interface Question {
  readonly facts: Facts;
  readonly car: Car;
  readonly found: Reading;
  readonly request: Request;
  readonly moment: Moment;
}

interface Settled {
  readonly entries: readonly NewEntry[];
  readonly reading: Reading;
  readonly other: Reading | null;
}

const SETTLED_BY: Readonly<Record<Request['verdict'], (question: Question) => Result<Settled>>> = {
  right: (question) => standing(question, { ...question.found, instrument: instrumentOf(question), standing: 'accepted', sure: true }),
  wrong: ({ found }) => restated({ ...found, standing: 'dismissed' }),
  corrected,
  replaced,
  'other-wrong': otherWrong,
};

function restated(reading: Reading): Result<Settled> {
  return ok({ entries: [newEntry(readingRecorded, reading)], reading, other: null });
}

/** A reading that is right after all was read from the instrument that is now known to have been in the car on its day. */
function instrumentOf({ facts, found }: Question): string | null {
  return instrumentOn(facts.ofCar(instruments, found.car), found.date)?.id ?? null;
}

function standing({ facts, car }: Question, reading: Reading): Result<Settled> {
  const possible = notAboveLastShown(facts, car, reading);
  return possible.ok ? restated(reading) : possible;
}

/** The one typed is dismissed, and another of that day takes its place: judged like any other, it may be in doubt itself. */
function corrected({ facts, car, found, request, moment }: Question): Result<Settled> {
  if (request.value === undefined && request.unit === undefined) return refuse('value-missing', {}, ['value']);
  const meant = { value: request.value ?? found.typed.value, unit: request.unit ?? found.typed.unit };
  const better = inPlaceOf(facts, car, found, meant, request.sure, moment);
  return better.ok ? ok({ ...better.value, other: null }) : better;
}

function inPlaceOf(facts: Facts, car: Car, wrong: Reading, meant: Reading['typed'], sure: boolean, moment: Moment): Result<Omit<Settled, 'other'>> {
  const { date, source, note, paper } = wrong;
  const better = decideReading(facts, car, { car: car.id, ...meant, date, source, note, paper, sure, replaced: null }, moment);
  if (!better.ok) return better;
  return ok({ entries: [newEntry(readingRecorded, { ...wrong, standing: 'dismissed' }), ...better.value.entries], reading: better.value.reply.reading });
}

/** It is the first of a new instrument; later ones that only the keeper's word made stand on the old line are of it too. */
function replaced({ facts, car, found, request, moment }: Question): Result<Settled> {
  const { standing: _standing, doubt: _doubt, instrument: _instrument, ...typedFirst } = found;
  const typed = { value: found.typed.value, unit: request.unit ?? found.typed.unit };
  const shown = fromTyped(typed);
  if (!shown.ok) return shown;
  const misplaced = facts.ofCar(readings, car.id).filter((later) => stoodByWord(found, later));
  // They say nothing of how far the car had gone on the old instrument.
  const without = withEntries(facts, misplaced.map((later) => newEntry(readingRecorded, { ...later, standing: 'set-aside' })));
  const decided = replaceInstrument(without, car, { ...typedFirst, typed, shown: shown.value, sure: found.sure || request.sure }, request, moment);
  if (!decided.ok) return decided;
  const { entries, reply: { reading } } = decided.value;
  const all = withEntries(facts, entries).ofCar(instruments, car.id);
  const moved = misplaced.filter((later) => instrumentOn(all, later.date)?.id === reading.instrument);
  return ok({ entries: [...entries, ...moved.map((later) => newEntry(readingRecorded, { ...later, instrument: reading.instrument }))], reading, other: null });
}

function stoodByWord(found: Reading, later: Reading): boolean {
  return later.standing === 'accepted' && later.doubt !== null && later.instrument === found.instrument && later.date > found.date;
}

/** The accepted reading that it contradicts is dismissed or corrected, and it stands itself. */
function otherWrong(question: Question): Result<Settled> {
  const { facts, car, found, request, moment } = question;
  const own = { ...found, instrument: instrumentOf(question) };
  const possible = notAboveLastShown(facts, car, own);
  if (!possible.ok) return possible;
  const other = judgeCarReading(carUse(facts, car), own).against?.reading ?? null;
  if (other === null) return refuse('no-other-reading', {}, ['reading']);
  const dismissed: Reading = { ...other, standing: 'dismissed' };
  const gone = [newEntry(readingRecorded, dismissed)];
  const better = request.value === undefined ? ok({ entries: gone }) : inPlaceOf(withEntries(facts, gone), car, other, { value: request.value, unit: other.typed.unit }, request.sure, moment);
  if (!better.ok) return better;
  const doubt = judgeCarReading(carUse(withEntries(facts, better.value.entries), car), own).doubt;
  const reading: Reading = { ...own, standing: 'accepted', doubt, sure: own.sure || doubt !== null };
  return ok({ entries: [...better.value.entries, newEntry(readingRecorded, reading)], reading, other: dismissed });
}
