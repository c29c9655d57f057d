import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Json } from '../journal/canonical-json.ts';
import parts from './parts.json' with { type: 'json' };
import { resolveDates } from './resolve-dates.ts';
import { call, type SampleRequest, type SampleStep } from './sample-step.ts';

const operations = [
  'part-preference.set', 'never-mix.set', 'number.supersede', 'tool.set', 'task-tools.set', 'order.place', 'order.receive', 'order.return', 'waste.keep', 'waste.dispose', 'stock.take',
] as const;
const samplePartsSchema = z.strictObject({ calls: z.array(z.strictObject({ on: dateSchema, operation: z.enum(operations), request: z.record(z.string(), z.json()) })) });

/** What is preferred, what is never mixed, tools, orders with all that may become of them, waste and a stocktake. */
export function partsSteps(today: LocalDate): readonly SampleStep[] {
  const { calls } = samplePartsSchema.parse(resolveDates(parts as Json, today));
  return calls.map(({ on, operation, request }) => call(on, operation, request as SampleRequest));
}
