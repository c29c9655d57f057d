import { findCar } from '../fleet/find-car.ts';
import { decideReading } from '../fleet/record-reading.ts';
import type { RecordReadingReply } from '../fleet/recorded-reading.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import type { NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import type { Moment } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { serviceItems } from '../care/service-item.ts';
import type { CloseCar } from './close-request.ts';

/** What is kept of a car on which no task was done: no record holds it. */
export interface WithoutRecord {
  readonly entries: readonly NewEntry[];
  readonly reading: RecordReadingReply | null;
  /** What was typed, for the note of the session. */
  readonly note: string;
}

/**
 * Keeps what was told of a car without a record: a reading beside what was met or measured, and the words with the session. What can stand
 * nowhere is refused at its field, so that nothing typed is lost unsaid.
 */
export function closeWithoutRecord(facts: Facts, car: CloseCar, date: LocalDate, moment: Moment): Result<WithoutRecord> {
  const homeless = homelessField(car);
  if (homeless !== undefined) return refuse('nothing-done-on-car', {}, [homeless]);
  const found = findCar(facts, car.car);
  if (!found.ok) return found;
  const why = car.lines.flatMap(({ item, note }) => (note === '' ? [] : [`${(item === null ? null : facts.get(serviceItems, item)?.name) ?? ''}: ${note}`]));
  const note = [...(car.note === '' ? [] : [car.note]), ...why].map((one) => `${found.value.name}: ${one}`).join('\n');
  if (car.reading === null) return ok({ entries: [], reading: null, note });
  const reading = decideReading(facts, found.value, { ...car.reading, car: found.value.id, date, source: 'keeper', note: '', paper: null, sure: false, replaced: null }, moment);
  return reading.ok ? ok({ entries: reading.value.entries, reading: reading.value.reply, note }) : reading;
}

/** The first field that was filled in and can stand nowhere: a renewal takes papers and a reference, and a reading stands beside it or beside what was measured. */
function homelessField(car: CloseCar): keyof CloseCar | undefined {
  const [met, measured] = [car.met.length > 0, car.measured.length > 0];
  const filled: readonly (readonly [keyof CloseCar, boolean])[] = [
    ['reading', car.reading !== null && !met && !measured], ['costs', car.costs.length > 0], ['lotsUsed', car.lotsUsed.length > 0], ['printedTotalMinor', car.printedTotalMinor !== null],
    ['doneBy', car.doneBy !== null], ['approvedBy', car.approvedBy !== null], ['reference', car.reference !== null && !met], ['method', car.method !== null], ['papers', car.papers.length > 0 && !met],
  ];
  return filled.find(([, lost]) => lost)?.[0];
}
