import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import { ok, type Result } from '../../shared-core/result/result.ts';
import { runSample } from '../../shared-core/sample/run-sample.ts';
import { enteredAt, type SampleStep } from '../../shared-core/sample/sample-step.ts';
import { sampleSteps } from '../../shared-core/sample/sample-steps.ts';
import type { World } from './host-context.ts';
import { drawSamplePaper } from './sample-papers.ts';

/**
 * Writes the sample household through the ordinary operations, each on its own day, so that the sample is made of the same
 * entries as a real one. `call` runs an operation in the folder being filled, `setDay` moves that folder's clock. A refusal
 * (a full disk) names the step that met it.
 */
export async function writeSample(
  today: LocalDate,
  setDay: (day: LocalDate) => void,
  call: (operation: string, request: unknown) => Promise<Result<unknown>>,
): Promise<Result<null>> {
  const written = await runSample(sampleSteps(today), async (step) => {
    setDay(step.on);
    return call(step.operation, await requestOf(step));
  });
  return written.ok ? ok(null) : written;
}

/** A paper comes as its description, and is kept as the bytes drawn from it. */
async function requestOf(step: SampleStep): Promise<unknown> {
  if (step.operation !== 'paper.keep') return step.request;
  const { name, draw } = step.request;
  return { name, base64: Buffer.from(await drawSamplePaper(draw)).toString('base64') };
}

/** The real world with its clock set to a day. */
export function worldOn(world: World, day: () => LocalDate): World {
  return { ...world, today: day, now: () => enteredAt(day()) };
}
