import { z } from 'zod';
import { findCar } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { workRecords, type WorkRecord } from '../records/work-record.ts';
import { ok } from '../result/result.ts';
import { standingPlaces } from '../sessions/place.ts';
import { lotViewSchema } from './parts-view-schema.ts';
import { shelfView } from './parts-shelf.ts';

const MOST_NAMES = 12;

/** What the form of a record has at hand: the shelf, and what was written in such fields before, the latest first. */
export const recordEnteringSchema = z.object({
  shelf: z.array(lotViewSchema),
  names: z.object({ placeName: z.array(z.string()), doneBy: z.array(z.string()), approvedBy: z.array(z.string()), method: z.array(z.string()) }),
});
export type RecordEntering = z.infer<typeof recordEnteringSchema>;

/** What stands on the shelf and can be named with work on a car, and the names written before. */
export const enteringRecord = ask({
  request: z.strictObject({ car: z.string().min(1).max(80) }),
  reply: recordEnteringSchema,
  answer: (facts, request, { today }) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const garages = standingPlaces(facts).flatMap(({ place }) => (place.kind === 'garage' ? [place.name] : []));
    return ok({
      shelf: shelfView(facts, today).filter((one) => one.left > 0),
      names: { placeName: unique([...namesOf(facts, 'placeName'), ...garages]), doneBy: namesOf(facts, 'doneBy'), approvedBy: namesOf(facts, 'approvedBy'), method: namesOf(facts, 'method') },
    });
  },
});

function namesOf(facts: Facts, field: 'placeName' | 'doneBy' | 'approvedBy' | 'method'): string[] {
  return unique([...facts.all(workRecords)].sort(latestFirst).flatMap((record) => record[field] ?? []));
}

function unique(names: readonly string[]): string[] {
  return [...new Set(names)].slice(0, MOST_NAMES);
}

function latestFirst(a: WorkRecord, b: WorkRecord): number {
  return a.date === b.date ? (a.id < b.id ? 1 : -1) : a.date < b.date ? 1 : -1;
}
