import { z } from 'zod';
import { refusedBy } from '../result/refused-by.ts';

/** What is left over from work and belongs to an authorised place, in the order in which a sheet lists it. */
export const disposalSchema = z.enum(
  ['used-oil', 'oil-filter', 'coolant', 'brake-fluid', 'fuel', 'fuel-filter', 'battery', 'old-linings', 'linings', 'tyre', 'lamp', 'filter', 'metal', 'rubber', 'sealant', 'grease'],
  refusedBy('unknown-disposal'),
);
export type Disposal = z.infer<typeof disposalSchema>;

/** Leavings once each, in the order of the list. */
export function disposalsInOrder(wanted: Iterable<Disposal>): readonly Disposal[] {
  const named = new Set(wanted);
  return disposalSchema.options.filter((one) => named.has(one));
}
