import type { LocalDate } from '../calendar/local-date.ts';
import type { Car } from '../fleet/car.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import type { Observation } from './observation.ts';

/** The days that are said now; what stands from before is not asked about again. */
export interface SeenDays {
  readonly date?: LocalDate | undefined;
  readonly recheckOn?: LocalDate | null | undefined;
}

/** What must hold of the days of an observation: seen by today and no sooner than the car was there, and looked at again no sooner than seen. */
export function checkSeen({ firstRegistered: registered }: Car, { date, recheckOn }: Observation, said: SeenDays, today: LocalDate): Result<null> {
  if (date > today) return refuse('date-in-future', { date }, ['date']);
  if (said.date !== undefined && registered !== null && date < registered) return refuse('before-registration', { date, registered }, ['date']);
  if (recheckOn === null || recheckOn >= date || (said.date === undefined && said.recheckOn === undefined)) return ok(null);
  return refuse('recheck-before-seen', { date: recheckOn, seen: date }, [said.recheckOn === undefined ? 'date' : 'recheckOn']);
}
