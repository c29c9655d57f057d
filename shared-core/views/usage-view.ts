import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { dayNumber, type LocalDate } from '../calendar/local-date.ts';
import type { CarUse } from '../fleet/car-usage.ts';
import type { LayUp } from '../fleet/lay-up.ts';
import type { UseChange } from '../fleet/use-change.ts';
import type { Usage } from '../fleet/usage-rate.ts';
import { must } from '../result/assert.ts';
import type { Message } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { METRES_IN, type DistanceUnit } from '../units/distance.ts';

export const usageViewSchema = z.object({
  /** By the use in force on the day of the last reading. */
  kmAYear: z.number(),
  prior: z.enum(['generic', 'declared', 'declared-set-aside']),
  /** Since when it is used so; null where its use was never said to have changed. */
  since: dateSchema.nullable(),
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

/** How a car is used, or null while nothing was read. After a change of use without a figure its readings speak alone. */
export function usageView({ usage, told }: CarUse): UsageView | null {
  if (usage === null) return null;
  return {
    kmAYear: Math.round(usage.ratePerSeasonDay * DAYS_A_YEAR),
    prior: usage.prior === 'as-before' ? 'generic' : usage.prior,
    since: changeBy(told.changes, (change) => dayNumber(change.date) <= usage.lastDay)?.date ?? null,
  };
}

/** What the keeper should know of how the use was worked out, in words. */
export function usageNotes(use: CarUse, unit: DistanceUnit, today: LocalDate): UsageNote[] {
  const messages = [declaredNote(use, unit), changeNote(use, today), ...layUpNotes(use, unit, today)];
  return messages.flatMap((message) => (message === null ? [] : [{ code: message.key as UsageNote['code'], text: say(message) }]));
}

/** The guard on the declared distance has set it aside. */
function declaredNote({ usage, told }: CarUse, unit: DistanceUnit): Message | null {
  if (usage?.prior !== 'declared-set-aside') return null;
  const inForce = changeBy(told.changes, (change) => dayNumber(change.date) <= usage.lastDay);
  const declared = must(inForce === null ? told.declaredAYear : inForce.declaredAYear, 'declared distance');
  return { key: 'declared-far-off', values: { declared: declared.value, declaredUnit: declared.unit, measured: measuredAYear(usage, unit), unit } };
}

/** Rounded to hundreds: no finer than it is known. */
function measuredAYear(usage: Usage, unit: DistanceUnit): number {
  return Math.round((must(usage.measuredRate, 'measured rate') * DAYS_A_YEAR * 1000) / METRES_IN[unit] / 100) * 100;
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
