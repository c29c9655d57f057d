import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { distanceUnitSchema, typedDistanceSchema } from '../units/distance-schema.ts';
import { vinShapeSchema } from './vin.ts';

/** What drives the car; an electric or hybrid one brings high-voltage cautions. */
export const powerSchema = z.enum(['petrol', 'diesel', 'hybrid', 'electric', 'other']);

/** A car of the household. */
export const carSchema = z.strictObject({
  id: idSchema,
  name: plainText(60),
  /** What a person would call it: "small hatch", "camper". */
  description: plainText(80).nullable(),
  power: powerSchema,
  year: z.int().min(1900, refusedBy('not-a-year')).max(2199, refusedBy('not-a-year')).nullable(),
  firstRegistered: dateSchema.nullable(),
  /** Since when the present keeper has had it; null: from new. */
  keptSince: dateSchema.nullable(),
  /** The unit its instrument shows. */
  unit: distanceUnitSchema,
  vin: vinShapeSchema.nullable(),
  registration: plainText(20).nullable(),
  /** A hobby car may be apart while others are needed. */
  use: z.enum(['everyday', 'hobby']),
  /** Distance a year as the keeper expects it. */
  declaredAYear: typedDistanceSchema.nullable(),
  /** Months (1 to 12) in which the car sleeps. */
  laidUpMonths: z.array(z.int().min(1).max(12)).max(11, refusedBy('laid-up-all-year')).refine((months) => new Set(months).size === months.length, refusedBy('month-twice')),
  /** Severe use shortens every interval: 1 is ordinary, 0.4 the least. */
  severeUse: z.number().min(0.4, refusedBy('severe-use-range')).max(1, refusedBy('severe-use-range')),
});
export type Car = z.infer<typeof carSchema>;

export const cars = family('car', 'fleet', carSchema);
export const carSet = factEntry('car-set', cars, { car: (car) => car.id });
