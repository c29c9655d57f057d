import { z } from 'zod';
import { cars } from '../fleet/car.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { priceSchema } from '../units/money.ts';

const notYear = refusedBy('not-a-year');

/** What fuel or charging of a car cost in a year, as its keeper puts it; no more is kept of it. */
export const yearlyFuelSchema = z.strictObject({ id: idSchema, car: idSchema, year: z.int(notYear).min(1900, notYear).max(2199, notYear), paidMinor: priceSchema, note: longText(300) });
export type YearlyFuel = z.infer<typeof yearlyFuelSchema>;

export const yearlyFuels = family('yearly-fuel', 'ledger', yearlyFuelSchema);
// The household's own: what was put into the tank is no part of a car's history.
export const yearlyFuelSet = factEntry('yearly-fuel-set', yearlyFuels, { car: () => null, refersTo: (one) => refers(cars, one.car) });
export const yearlyFuelRemoved = factRemoval('yearly-fuel-removed', yearlyFuels);
