import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { addDays, asDate, yearOf, type LocalDate } from '../calendar/local-date.ts';
import { ledgerSettingsSchema } from '../ledger/ledger-settings.ts';
import { yearlyFuelSchema } from '../ledger/yearly-fuel.ts';
import type { Json } from '../journal/canonical-json.ts';
import ledger from './ledger.json' with { type: 'json' };
import { resolveDates } from './resolve-dates.ts';
import { call, type SampleRequest, type SampleStep } from './sample-step.ts';

const sampleLedgerSchema = z.strictObject({
  settings: ledgerSettingsSchema.omit({ id: true }),
  fuel: z.array(z.strictObject({ car: z.string(), yearsBack: z.int().min(1), paidMinor: yearlyFuelSchema.shape.paidMinor, note: z.string().default('') })),
  quotes: z.array(z.looseObject({ on: dateSchema })),
  wishes: z.array(z.looseObject({ id: z.string(), addedOn: dateSchema, plannedOn: dateSchema.optional() })),
});

/** A price that is held against work is entered when that work has been done. */
function heldOn(quote: { readonly on: LocalDate; readonly records?: unknown }): LocalDate {
  return quote.records === undefined ? quote.on : addDays(quote.on, 30);
}

/** What one's own hour counts, what is put by and wished for, and what fuel and charging came to, each year's figure entered on its last day. */
export function ledgerSteps(today: LocalDate): readonly SampleStep[] {
  const { settings, fuel, quotes, wishes } = sampleLedgerSchema.parse(resolveDates(ledger as Json, today));
  const lastDayOf = (yearsBack: number) => asDate(yearOf(today) - yearsBack, 12, 31);
  return [
    call(settings.savingSince ?? today, 'ledger-settings.set', settings),
    ...fuel.map(({ car, yearsBack, paidMinor, note }) => call(lastDayOf(yearsBack), 'fuel.set', { car, year: yearOf(today) - yearsBack, paidMinor, note })),
    ...quotes.map((quote) => call(heldOn(quote), 'quote.set', quote as unknown as SampleRequest)),
    ...wishes.flatMap(({ addedOn, plannedOn, ...wish }) => [
      call(addedOn, 'wish.set', wish as unknown as SampleRequest),
      ...(plannedOn === undefined ? [] : [call(plannedOn, 'wish.plan', { wish: wish.id })]),
    ]),
  ];
}
