import { z } from 'zod';
import { serviceItems } from '../../care/service-item.ts';
import { cars } from '../../fleet/car.ts';
import { readingRecorded } from '../../fleet/reading.ts';
import type { NewEntry } from '../../journal/entry-kind.ts';
import type { Facts } from '../../journal/facts.ts';
import { workRecorded } from '../../records/work-record.ts';
import { compareNames } from '../../result/compare-names.ts';

/** A car of the household: what a table brings it, and the items that a text of the work may mean. */
export const importCarSchema = z.object({
  id: z.string(),
  name: z.string(),
  registration: z.string().nullable(),
  readings: z.int(),
  records: z.int(),
  items: z.array(z.object({ id: z.string(), name: z.string() })),
});
export type ImportCar = z.infer<typeof importCarSchema>;

/** Every car by its name, with what the entries of a table would bring it. @example importCars(facts, entries)[0]?.readings //=> 118 */
export function importCars(facts: Facts, entries: readonly NewEntry[]): readonly ImportCar[] {
  const brought = (kind: string, car: string) => entries.filter((entry) => entry.kind === kind && entry.values['car'] === car).length;
  return facts.all(cars).toSorted((a, b) => compareNames(a.name, b.name)).map(({ id, name, registration }) => ({
    id, name, registration,
    readings: brought(readingRecorded.kind, id),
    records: brought(workRecorded.kind, id),
    items: facts.ofCar(serviceItems, id).map((item) => ({ id: item.id, name: item.name })).toSorted((a, b) => compareNames(a.name, b.name)),
  }));
}
