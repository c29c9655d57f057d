import { composeMeasurement, type AddMeasurementRequest } from '../care/add-measurement.ts';
import type { Measurement } from '../care/measurement.ts';
import type { Car } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import type { Moment } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { observations, type Observation } from './observation.ts';
import type { WorkRecord } from './work-record.ts';

type Asked = Pick<AddMeasurementRequest, 'item' | 'what' | 'name' | 'place' | 'wheel' | 'value' | 'unit' | 'fresh' | 'gauge' | 'note'>;

/** What was seen and is settled by a record, closed on its day. */
export function settledBy(facts: Facts, record: WorkRecord, settles: readonly string[]): Result<readonly Observation[]> {
  const closed: Observation[] = [];
  for (const [at, id] of [...new Set(settles)].entries()) {
    const now = facts.get(observations, id);
    if (now === null || now.car !== record.car) return refuse('unknown-observation', { observation: id }, ['settles', at]);
    if (now.closedBy !== null) return refuse('observation-closed', {}, ['settles', at]);
    if (now.date > record.date) return refuse('seen-after-record', { seen: now.date, date: record.date }, ['settles', at]);
    closed.push({ ...now, closedBy: record.id, closedOn: record.date });
  }
  return ok(closed);
}

/** What was measured in the course of the work, on its day and with its reading. */
export function measuredWith(facts: Facts, car: Car, { date, reading, place }: WorkRecord, asked: readonly Asked[], moment: Moment): Result<readonly Measurement[]> {
  const taken: Measurement[] = [];
  for (const [at, one] of asked.entries()) {
    const whole = composeMeasurement(facts, car, { ...one, car: car.id, date, reading: null, readingId: null, distance: null, source: place === 'home' ? 'keeper' : 'garage', paper: null }, reading, moment);
    if (!whole.ok) return { ok: false, refusal: { ...whole.refusal, path: ['measured', at, ...(whole.refusal.path ?? [])] } };
    taken.push(whole.value);
  }
  return ok(taken);
}
