import { z } from 'zod';
import type { Json } from '../journal/canonical-json.ts';
import { must } from '../result/assert.ts';
import { ok, type Result } from '../result/result.ts';
import { LABEL_PREFIX, type CallStep, type PaperStep, type SampleStep } from './sample-step.ts';

/** Does one step for the runner: an operation of the contract on the step's day, or a paper drawn and then kept. */
export type RunStep = (step: SampleStep) => Promise<Result<unknown>>;

const keptSchema = z.object({ paper: z.object({ id: z.string() }) });

/**
 * Does all steps in turn, naming papers by their ids once they are kept; stops at the first refusal, which is our own
 * fault and names the step.
 *
 * @example await runSample(sampleSteps(today), run) //=> { ok: true, value: 431 }
 */
export async function runSample(steps: readonly SampleStep[], run: RunStep): Promise<Result<number>> {
  const papers = new Map<string, string>();
  for (const step of steps) {
    const reply = await run(step.operation === 'paper.keep' ? step : withPapers(step, papers));
    if (!reply.ok) return { ok: false, refusal: { ...reply.refusal, values: { ...reply.refusal.values, step: `${step.operation} on ${step.on}` } } };
    if (step.operation === 'paper.keep') papers.set(step.label, keptId(step, reply.value));
  }
  return ok(steps.length);
}

function keptId(step: PaperStep, reply: unknown): string {
  return must(keptSchema.safeParse(reply).data, `paper in the reply for ${step.label}`).paper.id;
}

function withPapers(step: CallStep, papers: ReadonlyMap<string, string>): CallStep {
  return { ...step, request: inPlaceOfLabels(step.request, papers) as CallStep['request'] };
}

function inPlaceOfLabels(value: Json, papers: ReadonlyMap<string, string>): Json {
  if (typeof value === 'string') return value.startsWith(LABEL_PREFIX) ? must(papers.get(value), `paper ${value}`) : value;
  if (Array.isArray(value)) return value.map((one: Json) => inPlaceOfLabels(one, papers));
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, inPlaceOfLabels(inner, papers)]));
}
