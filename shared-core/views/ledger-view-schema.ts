import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { carSchema } from '../fleet/car.ts';
import { ledgerSettingsSchema } from '../ledger/ledger-settings.ts';
import { COST_KINDS } from '../ledger/posting.ts';
import { yearlyFuelSchema } from '../ledger/yearly-fuel.ts';
import { distanceUnitSchema } from '../units/distance-schema.ts';
import { saidSchema } from './plan-said.ts';

const kindSums = z.partialRecord(z.enum(COST_KINDS), z.int());

/** A year of a car. Fuel is told by itself: it is in no total. */
export const carYearSchema = z.object({
  year: z.int(),
  totalMinor: z.int(),
  byKind: kindSums,
  fuelMinor: z.int(),
  /** The distance of the year in the car's unit; null where nobody knows it. `estimated`: one of its ends was not read on the day. */
  distance: z.object({ value: z.int(), estimated: z.boolean() }).nullable(),
  /** What a thousand of the car's unit cost, without fuel; null without a distance. */
  perThousandMinor: z.int().nullable(),
  /** One's own time, which nobody paid. */
  minutes: z.int(),
  timeMinor: z.int(),
  /** The car was here for the whole of it, and it is over. */
  whole: z.boolean(),
});

export const carCostsSchema = z.object({
  car: z.string(), name: z.string(), unit: distanceUnitSchema, power: carSchema.shape.power,
  left: z.object({ on: dateSchema, how: z.enum(['sold', 'scrapped']) }).nullable(),
  totalMinor: z.int(),
  fuelMinor: z.int(),
  byKind: kindSums,
  /** The latest first; from the first year that has anything to this one. */
  years: z.array(carYearSchema),
  /** What a whole year cost in the middle of the last ones, with the distance of such a year; null while there is no whole year. */
  keepAYear: z.object({ minor: z.int(), years: z.int(), lowMinor: z.int(), highMinor: z.int(), distance: z.int().nullable() }).nullable(),
});

const rowSchema = z.object({ kind: z.string(), name: z.string(), minor: z.int(), source: z.object({ kind: z.string(), id: z.string() }) });

/** All that the Ledger tells of what was paid. Amounts in minor units of the household's currency. */
export const ledgerViewSchema = z.object({
  today: dateSchema, currency: z.string(),
  settings: ledgerSettingsSchema,
  paid: z.object({ paidMinor: z.int(), carsMinor: z.int(), wishesMinor: z.int(), shelfMinor: z.int() }),
  /** By year of payment and by year of use: a part bought in one year and used in the next is in both, once on each side. */
  years: z.array(z.object({ year: z.int(), paidMinor: z.int(), carsMinor: z.int(), wishesMinor: z.int(), goneMinor: z.int(), stockBeforeMinor: z.int(), stockAfterMinor: z.int() })),
  cars: z.array(carCostsSchema),
  wishes: z.array(z.object({ wish: z.string(), name: z.string(), car: z.string(), minor: z.int() })),
  /** What money still stands for, and what it went for without any car. */
  standing: z.array(rowSchema),
  gone: z.array(rowSchema.extend({ on: dateSchema })),
  /** What a further year of waiting counts for what is late, by the plan's rates: nobody pays it. */
  waiting: z.array(z.object({ car: z.string(), carName: z.string(), item: z.string(), name: z.string(), harm: z.enum(['safety', 'damage', 'comfort']), aYearMinor: z.int() })),
  fuel: z.array(yearlyFuelSchema),
  /** What the sums do not hold, or hold in a way that one should know. */
  notes: z.array(saidSchema),
});
export type LedgerView = z.infer<typeof ledgerViewSchema>;

/** A line of the ledger: what something cost, on which day, for whom. */
export const ledgerLineSchema = z.object({
  on: dateSchema, kind: z.enum(COST_KINDS), minor: z.int(),
  /** Where it is known from, and what it says. */
  source: z.object({ kind: z.string(), id: z.string() }), text: z.string(),
  car: z.string().nullable(), carName: z.string().nullable(), wish: z.string().nullable(), wishName: z.string().nullable(),
});
export type LedgerLine = z.infer<typeof ledgerLineSchema>;
