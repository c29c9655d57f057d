import { randomBytes, randomUUID } from 'node:crypto';
import { localDate, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import { must } from '../../shared-core/result/assert.ts';
import type { World } from './host-context.ts';
import { sha256 } from './node-digests.ts';

/** The machine's own clock and chance; `on` sets today for a run. */
export function realWorld(on: LocalDate | null = null): World {
  return {
    today: () => on ?? todayHere(),
    now: () => new Date().toISOString(),
    newId: randomUUID,
    making: { sha256, newSalt: () => randomBytes(16).toString('hex') },
  };
}

/** Today where the person is: by the machine's own time zone. */
function todayHere(): LocalDate {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  const date = localDate(`${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`);
  return must(date.ok ? date.value : null, 'date of today');
}
