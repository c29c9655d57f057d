import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { CarUse } from '../fleet/car-usage.ts';
import { instrumentOn, offsetOf } from '../fleet/continuous-distance.ts';
import { doubtfulReadings, type DoubtfulReading, type NextReadingSays } from '../fleet/doubtful-readings.ts';
import type { ContradictedReading } from '../fleet/judge-car-reading.ts';
import type { OdometerBand } from '../fleet/odometer-forecast.ts';
import type { Reading } from '../fleet/reading.ts';
import type { MessageValues } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { distanceUnitSchema } from '../units/distance-schema.ts';
import { inUnit, METRES_IN, type DistanceUnit } from '../units/distance.ts';

/** Another reading that is shown beside a doubtful one. */
const besideSchema = z.object({ reading: z.string(), date: dateSchema, value: z.number(), unit: distanceUnitSchema, text: z.string() });

export const doubtfulViewSchema = z.object({
  reading: z.string(),
  date: dateSchema,
  value: z.number(),
  unit: distanceUnitSchema,
  code: z.string(),
  text: z.string(),
  /** Nothing speaks against it any more: it only waits to be confirmed. */
  fitsNow: z.boolean(),
  /** What the instrument was expected to show that day, in the unit typed: 1 in 10 below `low`, 1 in 10 above `high`. */
  expected: z.object({ low: z.number(), likely: z.number(), high: z.number() }).nullable(),
  /** Values that may have been meant, in the unit typed, likeliest first; `slips` says of each what would explain it. */
  repairs: z.array(z.number()),
  slips: z.array(z.enum(['swap', 'unit', 'insert', 'delete', 'substitute'])),
  /** The accepted reading it contradicts: show both. `reading.settle` with `other-wrong` dismisses that one instead. */
  against: besideSchema.extend({ likelierSlip: z.boolean() }).nullable(),
  /** What the next reading makes of it; with `replaced` the whole distance that the car had gone, estimated, in the car's unit. */
  next: besideSchema.extend({ says: z.enum(['slip', 'replaced', 'follows', 'unsure']), distance: z.object({ value: z.number(), unit: distanceUnitSchema }).nullable() }).nullable(),
});
export type DoubtfulView = z.infer<typeof doubtfulViewSchema>;

/** The doubtful readings of a car as all screens ask about them, in order of date. */
export function doubtfulViews(use: CarUse, unit: DistanceUnit): DoubtfulView[] {
  return doubtfulReadings(use).map((one) => doubtfulView(use, one, unit));
}

function doubtfulView(use: CarUse, { reading, verdict, next }: DoubtfulReading, unit: DistanceUnit): DoubtfulView {
  const code = verdict.doubt ?? reading.doubt ?? 'decrease';
  return {
    reading: reading.id,
    date: reading.date,
    value: reading.typed.value,
    unit: reading.typed.unit,
    code,
    text: say({ key: verdict.doubt === null ? 'doubt-gone' : `doubt-${code}`, values: {} }),
    fitsNow: verdict.doubt === null,
    expected: verdict.expected === null ? null : expectedOf(use, reading, verdict.expected),
    repairs: verdict.repairs.map((repair) => repair.value),
    slips: verdict.repairs.map((repair) => repair.slip),
    against: verdict.against === null ? null : againstView(verdict.against),
    next: next === null ? null : nextView(next, unit),
  };
}

/** Whole distance as the instrument then in the car would have shown it. */
function expectedOf(use: CarUse, { date, typed }: Reading, band: OdometerBand): DoubtfulView['expected'] {
  const offset = offsetOf(use.instruments, instrumentOn(use.instruments, date)?.id ?? null);
  const shown = (km: number) => Math.round((km * 1000 - offset) / METRES_IN[typed.unit]);
  return { low: shown(band.low), likely: shown(band.likely), high: shown(band.high) };
}

function againstView({ reading, likelierSlip }: ContradictedReading): DoubtfulView['against'] {
  return { ...beside(reading, likelierSlip ? 'against-likelier-slip' : 'against'), likelierSlip };
}

function nextView(next: NextReadingSays, unit: DistanceUnit): DoubtfulView['next'] {
  if (next.says === 'follows') return { ...beside(next.first, 'next-follows'), says: next.says, distance: null };
  if (next.says !== 'replaced') return { ...beside(next.by, `next-${next.says}`), says: next.says, distance: null };
  const distance = { value: inUnit(next.distance, unit), unit };
  // In words no finer than it is known.
  return { ...beside(next.by, 'next-replaced', { distance: Math.round(distance.value / 100) * 100, distanceUnit: unit }), says: next.says, distance };
}

function beside({ id, date, typed }: Reading, key: string, more: MessageValues = {}): z.infer<typeof besideSchema> {
  return { reading: id, date, ...typed, text: say({ key, values: { ...typed, date, ...more } }) };
}
