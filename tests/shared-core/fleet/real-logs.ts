import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { parseOdometerLog } from '../../../shared-core/fleet/odometer-log.ts';
import type { DayKm } from '../../../shared-core/fleet/usage-rate.ts';

/** The logs lie beside the specification; they are measured from, never copied. */
export const LOGS_FOLDER = new URL('../../../../shared/odometer/', import.meta.url);

/** Seven logs of real cars, the highest reading of each day; null where the folder is absent. */
export function realLogs(): readonly { readonly name: string; readonly readings: readonly DayKm[] }[] | null {
  if (!existsSync(LOGS_FOLDER)) return null;
  return readdirSync(LOGS_FOLDER).filter((name) => name.endsWith('.csv')).sort().map((name) => {
    const log = parseOdometerLog(readFileSync(new URL(name, LOGS_FOLDER), 'utf8'));
    if (!log.ok) throw new Error(`${name}: ${log.refusal.code}`);
    return { name, readings: log.value.filter((reading, at) => log.value[at + 1]?.day !== reading.day).map(({ day, km }) => ({ day, km })) };
  });
}
