import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import { assert } from '../../shared-core/result/assert.ts';
import { sampleSteps } from '../../shared-core/sample/sample-steps.ts';
import type { World } from './host-context.ts';

/** The hour at which the sample's keeper writes things down, in UTC. */
const HOUR = 'T18:00:00.000Z';

/**
 * Writes the sample household through the ordinary operations, each on its own day, so that the sample is made of the same
 * entries as a real one. `call` runs an operation in the folder being filled, `setDay` moves that folder's clock.
 */
export async function writeSample(
  today: LocalDate,
  setDay: (day: LocalDate) => void,
  call: (operation: string, request: unknown) => Promise<{ readonly ok: boolean }>,
): Promise<void> {
  for (const step of sampleSteps(today)) {
    setDay(step.on);
    const reply = await call(step.operation, step.request);
    assert(reply.ok, `the sample is refused at ${step.operation} on ${step.on}: ${JSON.stringify(reply)}`);
  }
}

/** The real world with its clock set to a day. */
export function worldOn(world: World, day: () => LocalDate): World {
  return { ...world, today: day, now: () => `${day()}${HOUR}` };
}
