import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';

/** An amount in the specification's own unit: above 0, at most a million, three decimals. */
export const quantitySchema = z
  .number(refusedBy('not-a-quantity'))
  .positive(refusedBy('not-a-quantity'))
  .max(1_000_000, refusedBy('not-a-quantity'))
  .refine((value) => Math.abs(value * 1000 - Math.round(value * 1000)) < 1e-6, refusedBy('quantity-too-fine'));
