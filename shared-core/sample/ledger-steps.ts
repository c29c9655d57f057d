import { z } from 'zod';
import { asDate, yearOf, type LocalDate } from '../calendar/local-date.ts';
import { ledgerSettingsSchema } from '../ledger/ledger-settings.ts';
import { yearlyFuelSchema } from '../ledger/yearly-fuel.ts';
import type { Json } from '../journal/canonical-json.ts';
import ledger from './ledger.json' with { type: 'json' };
import { resolveDates } from './resolve-dates.ts';
import { call, type SampleStep } from './sample-step.ts';

const sampleLedgerSchema = z.strictObject({
  settings: ledgerSettingsSchema.omit({ id: true }),
  fuel: z.array(z.strictObject({ car: z.string(), yearsBack: z.int().min(1), paidMinor: yearlyFuelSchema.shape.paidMinor, note: z.string().default('') })),
});

/** What one's own hour counts, what is put by, and what fuel and charging came to, each year's figure entered on its last day. */
export function ledgerSteps(today: LocalDate): readonly SampleStep[] {
  const { settings, fuel } = sampleLedgerSchema.parse(resolveDates(ledger as Json, today));
  const lastDayOf = (yearsBack: number) => asDate(yearOf(today) - yearsBack, 12, 31);
  return [
    call(settings.savingSince ?? today, 'ledger-settings.set', settings),
    ...fuel.map(({ car, yearsBack, paidMinor, note }) => call(lastDayOf(yearsBack), 'fuel.set', { car, year: yearOf(today) - yearsBack, paidMinor, note })),
  ];
}
