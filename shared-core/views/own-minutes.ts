import { z } from 'zod';
import type { ServiceItem } from '../care/service-item.ts';
import type { WorkRecord } from '../records/work-record.ts';
import { learnedMinutes, type LearnedMinutes } from '../work/learned-minutes.ts';

/** As `LearnedMinutes`. */
export const ownMinutesSchema = z.object({ minutes: z.int(), low: z.int(), high: z.int(), own: z.int() });

/**
 * How long an item takes at home: by the minutes of one's own records, oldest first, and what was entered for it. Null where
 * nobody has said and nothing was measured. What a garage took tells nothing of one's own pace.
 */
export function ownMinutes({ id, minutes }: Pick<ServiceItem, 'id' | 'minutes'>, records: readonly WorkRecord[]): LearnedMinutes | null {
  const mine = records.filter((record) => record.place === 'home').toSorted((a, b) => (a.date === b.date ? (a.id < b.id ? -1 : 1) : a.date < b.date ? -1 : 1));
  const times = mine.flatMap((record) => record.lines.filter((line) => line.item === id && line.outcome !== 'not-done').flatMap((line) => line.minutes ?? []));
  return learnedMinutes(minutes, times);
}
