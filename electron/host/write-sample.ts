import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { runSample } from '../../shared-core/sample/run-sample.ts';
import { enteredAt, type SampleStep } from '../../shared-core/sample/sample-step.ts';
import { sampleSteps } from '../../shared-core/sample/sample-steps.ts';
import type { World } from './host-context.ts';
import { drawSamplePaper } from './sample-papers.ts';

/** The folder being filled: its operations, its clock, and whether to go on after so many steps. */
export interface SampleWriter {
  readonly call: (operation: string, request: unknown) => Promise<Result<unknown>>;
  readonly setDay: (day: LocalDate) => void;
  readonly onStep: (done: number, total: number) => Promise<boolean>;
}

/**
 * Writes the sample household through the ordinary operations, each on its own day, so that the sample is made of the same
 * entries as a real one. A refusal (a full disk) names the step that met it.
 */
export async function writeSample(today: LocalDate, { setDay, call, onStep }: SampleWriter): Promise<Result<null>> {
  const steps = sampleSteps(today);
  let done = 0;
  const written = await runSample(steps, async (step) => {
    if (!(await onStep(done, steps.length))) return refuse('sample-stopped');
    done += 1;
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
