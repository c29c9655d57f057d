import { z } from 'zod';
import { addMonths } from '../calendar/add-months.ts';
import { dateSchema } from '../calendar/date-schema.ts';
import { dayNumber, type LocalDate } from '../calendar/local-date.ts';
import type { CarUse } from '../fleet/car-usage.ts';
import type { LayUp } from '../fleet/lay-up.ts';
import { narrowedByReading } from '../fleet/narrowed-by-reading.ts';
import type { UseChange } from '../fleet/use-change.ts';
import type { Usage } from '../fleet/usage-rate.ts';
import { must } from '../result/assert.ts';
import type { Message } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { distanceUnitSchema, typedDistanceSchema } from '../units/distance-schema.ts';
import { METRES_IN, type DistanceUnit } from '../units/distance.ts';

export const usageViewSchema = z.object({
  /** By the use in force on the day of the last reading. */
  kmAYear: z.number(),
  prior: z.enum(['generic', 'declared', 'declared-set-aside']),
  /** Since when it is used so; null where its use was never said to have changed. */
  since: dateSchema.nullable(),
  unit: distanceUnitSchema,
  /** The same in the car's unit, in hundreds; and by the readings alone, null with one reading. */
  aYear: z.number(),
  measuredAYear: z.number().nullable(),
  /** As the keeper expects it for the use in force. */
  declaredAYear: typedDistanceSchema.nullable(),
  /** Days with a reading since the use is as it is. */
  readings: z.int(),
  /** How much of the rate is still the starting guess, in percent. */
  guessed: z.int(),
  /** January to December: a day of the month against an average day, in percent; 100 throughout where months do not count. */
  months: z.array(z.int()).length(12),
  /** How wide the range foreseen for a day is, in the car's unit: now, and were the odometer read today. */
  narrows: z.object({ on: dateSchema, now: z.number(), afterReading: z.number() }).nullable(),
});
export type UsageView = z.infer<typeof usageViewSchema>;

export const usageNoteSchema = z.object({
  code: z.enum(['declared-far-off', 'use-changed', 'use-changed-unread', 'lay-up-open', 'lay-up-driven']),
  text: z.string(),
});
export type UsageNote = z.infer<typeof usageNoteSchema>;

const DAYS_A_YEAR = 365.25;
/** A car at rest is moved about; more than this between two readings of one lay-up is driving. Ours, no source. */
const MOST_MOVED_METRES = 300_000;
/** So many months ahead one is told what a reading would narrow. */
const NARROWS_IN_MONTHS = 3;

/** How a car is used, or null while nothing was read. After a change of use without a figure its readings speak alone. */
export function usageView(use: CarUse, unit: DistanceUnit, today: LocalDate): UsageView | null {
  const { usage } = use;
  if (usage === null) return null;
  return {
    kmAYear: Math.round(usage.ratePerSeasonDay * DAYS_A_YEAR),
    prior: usage.prior === 'as-before' ? 'generic' : usage.prior,
    since: changeInForce(use, usage)?.date ?? null,
    unit,
    aYear: inHundreds(usage.ratePerSeasonDay, unit),
    measuredAYear: usage.measuredRate === null ? null : inHundreds(usage.measuredRate, unit),
    declaredAYear: declaredInForce(use, usage),
    readings: usage.readingDays,
    guessed: Math.round((100 * usage.priorDays) / (usage.priorDays + usage.exposure)),
    months: usage.season.multipliers.map((multiplier) => Math.round(100 * multiplier)),
    narrows: narrowsBy(use, unit, today),
  };
}

function narrowsBy(use: CarUse, unit: DistanceUnit, today: LocalDate): UsageView['narrows'] {
  const on = addMonths(today, NARROWS_IN_MONTHS);
  const narrowed = narrowedByReading(use, today, on);
  if (narrowed === null) return null;
  const width = ({ low, high }: { readonly low: number; readonly high: number }) => Math.round(((high - low) * 1000) / METRES_IN[unit] / 10) * 10;
  return { on, now: width(narrowed.now), afterReading: width(narrowed.afterReading) };
}

/** The change of use that was in force on the day of the last reading. */
function changeInForce({ told }: CarUse, { lastDay }: Usage): UseChange | null {
  return changeBy(told.changes, (change) => dayNumber(change.date) <= lastDay);
}

function declaredInForce(use: CarUse, usage: Usage): UsageView['declaredAYear'] {
  const change = changeInForce(use, usage);
  return change === null ? use.told.declaredAYear : change.declaredAYear;
}

/** What the keeper should know of how the use was worked out, in words. */
export function usageNotes(use: CarUse, unit: DistanceUnit, today: LocalDate): UsageNote[] {
  const messages = [declaredNote(use, unit), changeNote(use, today), ...layUpNotes(use, unit, today)];
  return messages.flatMap((message) => (message === null ? [] : [{ code: message.key as UsageNote['code'], text: say(message) }]));
}

/** The guard on the declared distance has set it aside. */
function declaredNote(use: CarUse, unit: DistanceUnit): Message | null {
  const { usage } = use;
  if (usage?.prior !== 'declared-set-aside') return null;
  const declared = must(declaredInForce(use, usage), 'declared distance');
  return { key: 'declared-far-off', values: { declared: declared.value, declaredUnit: declared.unit, measured: inHundreds(must(usage.measuredRate, 'measured rate'), unit), unit } };
}

/** A rate in km a season-day as distance a year, rounded to hundreds: no finer than it is known. */
function inHundreds(rate: number, unit: DistanceUnit): number {
  return Math.round((rate * DAYS_A_YEAR * 1000) / METRES_IN[unit] / 100) * 100;
}

function changeNote({ usage, told }: CarUse, today: LocalDate): Message | null {
  const change = changeBy(told.changes, ({ date }) => date <= today);
  if (change === null) return null;
  const unread = usage !== null && usage.lastDay < dayNumber(change.date);
  return { key: unread ? 'use-changed-unread' : 'use-changed', values: { date: change.date } };
}

function changeBy(changes: readonly UseChange[], began: (change: UseChange) => boolean): UseChange | null {
  return changes.filter(began).sort((a, b) => (a.date < b.date ? 1 : -1))[0] ?? null;
}

function layUpNotes(use: CarUse, unit: DistanceUnit, today: LocalDate): readonly (Message | null)[] {
  return use.told.layUps.flatMap((layUp) => [
    layUp.to === null && layUp.from <= today ? { key: 'lay-up-open', values: { from: layUp.from } } : null,
    drivenNote(use, layUp, unit),
  ]);
}

function drivenNote({ points }: CarUse, layUp: LayUp, unit: DistanceUnit): Message | null {
  const inside = points.filter(({ date }) => date >= layUp.from && (layUp.to === null || date <= layUp.to));
  const driven = (inside.at(-1)?.metres ?? 0) - (inside[0]?.metres ?? 0);
  return driven > MOST_MOVED_METRES ? { key: 'lay-up-driven', values: { from: layUp.from, distance: Math.round(driven / METRES_IN[unit]), unit } } : null;
}
