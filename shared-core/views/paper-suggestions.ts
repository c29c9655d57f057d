import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import { HOUSEHOLD_ID, households, type Household } from '../fleet/household.ts';
import type { Facts } from '../journal/facts.ts';
import { suppliers } from '../parts/supplier.ts';
import { countsIn, earlierThings } from '../records/earlier-things.ts';
import { namesIt, namesRegistration, plainWords } from '../records/names-in-text.ts';
import type { PaperContents } from '../records/paper-contents.ts';
import { observationsWithPapers, recordsWithPapers } from '../records/tied-papers.ts';
import { isClear, suggestTargets, type PaperTarget, type PaperTells } from '../records/suggest-records.ts';
import { amountsInText } from '../records/text-amounts.ts';
import { datesInText } from '../records/text-dates.ts';
import { say } from '../result/words/say.ts';
import { places } from '../sessions/place.ts';
import { amountText } from '../units/money.ts';

/** Something a paper may belong to, and why, in words. */
export const paperSuggestionSchema = z.object({
  kind: z.enum(['record', 'observation']),
  id: z.string(),
  car: z.string(),
  carName: z.string(),
  title: z.string(),
  date: dateSchema,
  /** It stands out from the others. */
  clear: z.boolean(),
  reasons: z.array(z.string()),
});
export type PaperSuggestion = z.infer<typeof paperSuggestionSchema>;

/** What a new record from a paper could begin with; null where the paper does not tell. */
export const recordStartSchema = z.object({ car: z.string().nullable(), date: dateSchema.nullable(), totalMinor: z.number().nullable(), placeName: z.string().nullable() });

/** A target with what is shown of it. */
export interface ShownTarget extends PaperTarget {
  readonly car: string;
  readonly title: string;
}

/** All that a paper may be suggested for: every car's records and what was seen of it. */
export function paperTargets(facts: Facts): readonly ShownTarget[] {
  const currency = facts.get(households, HOUSEHOLD_ID)?.currency ?? '';
  return facts.all(cars).flatMap((car) => {
    const earlier = earlierThings(facts, car.id);
    const of = { car: car.id, carName: car.name, registration: car.registration };
    return [
      ...recordsWithPapers(facts, car.id).map((one): ShownTarget => {
        const sum = one.costs.reduce((total, line) => total + line.amountMinor, 0);
        return { ...of, kind: 'record', id: one.id, title: one.title, date: one.date, placeName: one.placeName, sums: countsIn(currency, one, earlier) ? [...(one.printedTotalMinor === null ? [] : [one.printedTotalMinor]), ...(one.costs.length === 0 ? [] : [sum])] : [], hasPaper: one.papers.length > 0 };
      }),
      ...observationsWithPapers(facts, car.id).map((one): ShownTarget => ({ ...of, kind: 'observation', id: one.id, title: one.text, date: one.date, placeName: null, sums: [], hasPaper: one.papers.length > 0 })),
    ];
  });
}

/** What a paper's own text and day tell, in the household's own way of writing. */
export function paperTells(contents: PaperContents | null, day: LocalDate | null, { locale, currency }: Household, today: LocalDate): PaperTells {
  const text = contents?.text ?? '';
  return { dates: datesInText(text, locale === 'en-US' ? 'month-first' : 'day-first', today), amounts: amountsInText(text, currency), day, words: plainWords(text) };
}

/** What a paper may belong to, best first, with the reasons in words. */
export function paperSuggestions(tells: PaperTells, targets: readonly ShownTarget[], currency: string): PaperSuggestion[] {
  const found = suggestTargets(tells, targets);
  return found.map(({ target, reasons }, at) => {
    const { kind, id, car, carName, title, date } = target as ShownTarget;
    const texts = reasons.map(({ key, values }) => say({ key, values: typeof values['amount'] === 'number' ? { amount: `${amountText(values['amount'], currency)} ${currency}` } : values }));
    return { kind, id, car, carName, title, date, clear: at === 0 && isClear(found), reasons: texts };
  });
}

/** What a new record from this paper could begin with. */
export function recordStart(facts: Facts, tells: PaperTells): z.infer<typeof recordStartSchema> {
  const garages = [...facts.all(places).map((place) => place.name), ...facts.all(suppliers).map((supplier) => supplier.name), ...paperTargets(facts).flatMap((target) => target.placeName ?? [])];
  const named = facts.all(cars).filter((car) => namesRegistration(tells.words, car.registration) || namesIt(tells.words, car.name));
  return {
    car: named.length === 1 ? (named[0]?.id ?? null) : null,
    date: tells.dates[0]?.date ?? tells.day,
    totalMinor: tells.amounts.filter((one) => one.total).reduce<number | null>((most, one) => (most === null || one.minor > most ? one.minor : most), null),
    placeName: garages.find((name) => namesIt(tells.words, name)) ?? null,
  };
}
