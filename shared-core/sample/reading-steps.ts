import type { LocalDate } from '../calendar/local-date.ts';
import { readingDays } from './reading-days.ts';
import type { SampleCar, SingleReading } from './sample-car.ts';
import type { SampleInstrument } from './sample-instrument.ts';
import { call, type SampleStep } from './sample-step.ts';

/** The readings of a sample car: the regular ones, the single ones with their slips, and a replaced instrument. */
export function readingSteps(car: SampleCar, instrument: SampleInstrument): readonly SampleStep[] {
  const { readFrom, lastRead, gapDays, seed } = car.odometer;
  const days = readingDays({ from: readFrom, last: lastRead, gapDays, seed: seed + 1, laidUpMonths: car.car.laidUpMonths });
  const regular = days.map((on) => regularReading(car, on, instrument));
  return [...car.readings.flatMap((reading) => singleReading(car, reading, instrument)), ...regular];
}

function regularReading(car: SampleCar, on: LocalDate, { shown, unit }: SampleInstrument): SampleStep {
  return call(on, 'reading.record', { id: readingId(car, on), car: car.car.id, date: on, value: shown(on), unit, source: 'keeper' });
}

function singleReading(car: SampleCar, reading: SingleReading, { shown, oldShown, unit }: SampleInstrument): readonly SampleStep[] {
  const { on, source, note } = reading;
  const right = shown(on);
  const value = reading.loseDigit === undefined ? right : withoutDigit(right, reading.loseDigit);
  const replaced = car.odometer.replaced?.on === on ? { lastShown: { value: oldShown(on), unit } } : null;
  const id = readingId(car, on);
  const step = call(reading.entered ?? on, 'reading.record', { id, car: car.car.id, date: on, value, unit, source, note, replaced });
  if (reading.correctedOn === undefined) return [step];
  return [step, call(reading.correctedOn, 'reading.settle', { reading: id, verdict: 'corrected', value: right })];
}

function readingId(car: SampleCar, on: LocalDate): string {
  return `${car.car.id}-${on}`;
}

/** A number as typed with one digit left out. @example withoutDigit(58450, 0) //=> 8450 */
function withoutDigit(value: number, place: number): number {
  const digits = String(value);
  return Number(digits.slice(0, place) + digits.slice(place + 1));
}
