import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Json } from '../journal/canonical-json.ts';
import { resolveDates } from './resolve-dates.ts';
import { call, type SampleStep } from './sample-step.ts';
import sheets from './sheets.json' with { type: 'json' };

const sampleSheetsSchema = z.strictObject({
  on: dateSchema,
  /** Items, each with the starting sheet that its own was begun from. Some items have none. */
  start: z.record(z.string(), z.string()),
  written: z.array(z.record(z.string(), z.json())),
});

/** How the work on the sample's cars is done: sheets begun from starting ones, and one that the keeper wrote. */
export function sheetSteps(today: LocalDate): readonly SampleStep[] {
  const { on, start, written } = sampleSheetsSchema.parse(resolveDates(sheets as Json, today));
  return [...Object.entries(start).map(([item, from]) => call(on, 'sheet.start', { item, from })), ...written.map((request) => call(on, 'sheet.set', request))];
}
