import type { NewEntry } from '../journal/entry-kind.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import type { Moment } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { fromTyped, metresFromKilometres, type DistanceAsTyped, type Metres } from '../units/distance.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { carSet, type Car } from './car.ts';
import { carUse, type CarUse } from './car-usage.ts';
import { instrumentOn, wholeDistance } from './continuous-distance.ts';
import { instrumentReplaced, type Instrument } from './instrument.ts';
import { judgeCarReading } from './judge-car-reading.ts';
import { distanceOn } from './known-distance.ts';
import { readingRecorded, type Reading } from './reading.ts';
import { firstOfOldLater, movedToNew, readOfOldLater } from './readings-of-new-instrument.ts';
import type { RecordReadingReply } from './recorded-reading.ts';
import { withEntries } from './release-readings.ts';

/** The entries for a new instrument with its first reading, and the reply. */
export interface InstrumentReplacement {
  readonly entries: readonly NewEntry[];
  readonly reply: RecordReadingReply;
}

/** What the keeper says of the old instrument. */
export interface OldInstrument {
  /** What it last showed; null: nobody read it. */
  readonly lastShown: DistanceAsTyped | null;
  /** Readings of later days, taken to be of the old one, are of the new one. */
  readonly laterOfNew: boolean;
}

/**
 * States that a reading is the first of a new instrument. The car's whole distance then is what the old one last showed;
 * where nobody read it, what the forecast says, marked estimated. Refused: a second new instrument on one day, one put in
 * before the old one was last read, unless the keeper says that what was read then is of the new one; and a last value that
 * does not fit the readings, unless the keeper is sure.
 */
export function replaceInstrument(
  facts: Facts,
  car: Car,
  first: Omit<Reading, 'standing' | 'doubt' | 'instrument'>,
  { lastShown, laterOfNew }: OldInstrument,
  moment: Moment,
): Result<InstrumentReplacement> {
  const all = carUse(facts, car);
  if (all.instruments.some((one) => one.date === first.date)) return refuse('instrument-replaced-that-day', { date: first.date }, ['replaced']);
  const readLater = firstOfOldLater(facts, car, all, first.date);
  if (readLater !== null && !laterOfNew) return refuse('old-instrument-read-later', { ...readLater }, ['replaced', 'laterOfNew']);
  const use = carUse(withoutLater(facts, car, all, first.date), car);
  const distance = lastShown === null ? ok(estimatedOn(use, car, first.date)) : distanceLastShown(use, first, lastShown);
  if (!distance.ok) return distance;
  const instrument: Instrument = {
    id: moment.newId(),
    car: car.id,
    date: first.date,
    firstShown: first.shown,
    distance: distance.value,
    estimated: lastShown === null,
    unit: first.typed.unit,
    note: '',
  };
  const reading: Reading = { ...first, instrument: instrument.id, standing: 'accepted', doubt: null };
  const put = [newEntry(instrumentReplaced, instrument), newEntry(readingRecorded, reading), ...unitOfPresent(car, use, instrument)];
  return ok({
    entries: [...put, ...movedToNew(facts, car, instrument, put)],
    reply: { reading, state: 'accepted', code: null, repairs: [] },
  });
}

/** Readings of the new one say nothing of how far the car had gone on the old one. */
function withoutLater(facts: Facts, car: Car, use: CarUse, date: LocalDate): Facts {
  return withEntries(facts, readOfOldLater(facts, car, use, date).map((reading) => newEntry(readingRecorded, { ...reading, standing: 'set-aside' })));
}

/** The car's unit is what its present instrument shows: a new one in another unit changes it. */
function unitOfPresent(car: Car, use: CarUse, instrument: Instrument): readonly NewEntry[] {
  const isPresent = use.instruments.every((one) => one.date < instrument.date);
  return isPresent && car.unit !== instrument.unit ? [newEntry(carSet, { ...car, unit: instrument.unit })] : [];
}

/** The whole distance by what the old instrument last showed, judged like a reading of it. */
export function distanceLastShown(use: CarUse, at: Pick<Reading, 'date' | 'sure'>, lastShown: DistanceAsTyped): Result<Metres> {
  const shown = fromTyped(lastShown);
  if (!shown.ok) return shown;
  const last = { date: at.date, typed: lastShown, shown: shown.value, instrument: instrumentOn(use.instruments, at.date)?.id ?? null };
  const { doubt } = judgeCarReading(use, last);
  if (doubt !== null && !at.sure) return refuse('last-shown-doubtful', { value: lastShown.value, unit: lastShown.unit, date: at.date }, ['replaced', 'lastShown']);
  return ok(wholeDistance(last, use.instruments));
}

/** Where nothing is known, the car's distance is counted from its new instrument on. */
function estimatedOn(use: CarUse, car: Car, date: LocalDate): Metres {
  return distanceOn({ ...use, firstRegistered: car.firstRegistered }, date)?.metres ?? metresFromKilometres(0);
}
