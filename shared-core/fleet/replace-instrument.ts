import type { NewEntry } from '../journal/entry-kind.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import type { Moment } from '../journal/operation.ts';
import { fromTyped, metresFromKilometres, type DistanceAsTyped, type Metres } from '../units/distance.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Car } from './car.ts';
import { carUse } from './car-usage.ts';
import { instrumentOn, wholeDistance } from './continuous-distance.ts';
import { instrumentReplaced, instruments, type Instrument } from './instrument.ts';
import { odometerOnDate } from './odometer-forecast.ts';
import { readingRecorded, type Reading } from './reading.ts';
import type { RecordReadingReply } from './recorded-reading.ts';

/**
 * States that a reading is the first of a new instrument. The car's whole distance then is what the old one last showed;
 * where nobody read it, what the forecast says, marked estimated.
 */
export function replaceInstrument(
  facts: Facts,
  car: Car,
  first: Omit<Reading, 'standing' | 'doubt' | 'instrument'>,
  lastShown: DistanceAsTyped | null,
  moment: Moment,
): { entries: readonly NewEntry[]; reply: RecordReadingReply } {
  const instrument: Instrument = {
    id: moment.newId(),
    car: car.id,
    date: first.date,
    firstShown: first.shown,
    distance: distanceAt(facts, car, first.date, lastShown),
    estimated: lastShown === null,
    unit: first.typed.unit,
    note: '',
  };
  const reading: Reading = { ...first, instrument: instrument.id, standing: 'accepted', doubt: null };
  return {
    entries: [newEntry(instrumentReplaced, instrument), newEntry(readingRecorded, reading)],
    reply: { reading, state: 'accepted', code: null, repairs: [] },
  };
}

function distanceAt(facts: Facts, car: Car, date: LocalDate, lastShown: DistanceAsTyped | null): Metres {
  const use = carUse(facts, car);
  const shown = lastShown === null ? null : fromTyped(lastShown);
  if (shown?.ok === true) {
    const old = instrumentOn(facts.ofCar(instruments, car.id), date)?.id ?? null;
    return wholeDistance({ shown: shown.value, instrument: old }, use.instruments);
  }
  return metresFromKilometres(use.usage === null ? 0 : odometerOnDate(use.usage, date).likely);
}
