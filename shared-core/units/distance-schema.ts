import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';
import { fromTyped, metres, type Metres } from './distance.ts';

/** The unit an odometer shows. */
export const distanceUnitSchema = z.enum(['km', 'mi'], refusedBy('unknown-unit'));

/** A distance as a person typed it: 0 or more, at most 10 million km. */
export const typedDistanceSchema = z
  .strictObject({ value: z.number(refusedBy('not-a-distance')), unit: distanceUnitSchema })
  .refine((typed) => fromTyped(typed).ok, { ...refusedBy('not-a-distance'), path: ['value'] });

/** Whole metres, 0 or more. */
export const metresSchema = z.number().refine((value) => metres(value).ok, refusedBy('not-a-distance')) as unknown as z.ZodType<Metres>;
