import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';
import { localDate, type LocalDate } from './local-date.ts';

/** A calendar date that exists, between 1900 and 2199. */
export const dateSchema = z.string().refine((text) => localDate(text).ok, refusedBy('not-a-date')) as unknown as z.ZodType<LocalDate>;
