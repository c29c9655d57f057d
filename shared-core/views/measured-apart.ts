import { z } from 'zod';
import { wheels } from '../fleet/wheel.ts';
import type { Facts } from '../journal/facts.ts';
import { say } from '../result/words/say.ts';
import type { DistanceUnit } from '../units/distance.ts';
import type { SeriesVerdict, SeriesWear } from './measured-wear.ts';
import { subjectWords, verdictWords } from './wear-words.ts';

/** What measurements say that no due window says: a limit passed of which no item is measured, or values that contradict each other. */
export const measuredApartSchema = z.object({
  key: z.string(),
  subject: z.string(),
  verdict: z.enum(['past-limit', 'contradictory']),
  text: z.string(),
});
export type MeasuredApart = z.infer<typeof measuredApartSchema>;

/** Of each series of a car the first thing that is told nowhere else; what is past its limit first. */
export function measuredApart(facts: Facts, wear: readonly SeriesWear[], unit: DistanceUnit): readonly MeasuredApart[] {
  const told = wear.flatMap(({ series, verdicts }): MeasuredApart[] => {
    const verdict = verdicts.find(isPastUnseen) ?? verdicts.find((one) => one.forecast.verdict === 'contradictory');
    if (verdict === undefined) return [];
    const { wheel } = series.subject;
    return [{ key: series.key, subject: subjectWords(series, wheel === null ? null : (facts.get(wheels, wheel)?.name ?? null)), verdict: isPastUnseen(verdict) ? 'past-limit' : 'contradictory', text: say(verdictWords(verdict, unit)) }];
  });
  return [...told.filter((one) => one.verdict === 'past-limit'), ...told.filter((one) => one.verdict === 'contradictory')];
}

function isPastUnseen({ limit, forecast }: SeriesVerdict): boolean {
  return forecast.verdict === 'past-limit' && limit.items.length === 0;
}
