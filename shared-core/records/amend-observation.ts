import { z } from 'zod';
import { cars } from '../fleet/car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { ok, refuse } from '../result/result.ts';
import { checkSeen } from './check-seen.ts';
import { earlierThings } from './earlier-things.ts';
import { observationAmended, observationAmendedSchema } from './observation-amended.ts';
import { observations, observationSchema, type Observation } from './observation.ts';

const shape = observationSchema.shape;

/**
 * Corrects an open observation: only the fields given; the original stays in the journal. Why is welcome and not asked for, for what was found
 * with dirty hands is put into words later. One that is settled is put right with the record that settled it. Of one that an earlier keeper
 * wrote only the day of the next look changes.
 */
export const amendObservation = change({
  request: z.strictObject({
    id: shape.id,
    text: shape.text.optional(),
    severity: shape.severity.optional(),
    date: shape.date.optional(),
    recheckOn: shape.recheckOn.optional(),
    why: observationAmendedSchema.shape.why.default(''),
  }),
  reply: z.object({ observation: observationSchema }),
  decide: (facts, { why, ...request }, { today }) => {
    const now = facts.get(observations, request.id);
    if (now === null) return refuse('unknown-observation', { observation: request.id }, ['id']);
    if (now.closedBy !== null) return refuse('observation-closed', {}, ['id']);
    const observation: Observation = observationSchema.parse({ ...now, ...request });
    const isReworded = now.text !== observation.text || now.severity !== observation.severity || now.date !== observation.date;
    if (isReworded && earlierThings(facts, now.car).has(now.id)) return refuse('of-earlier-keeper', {}, ['id']);
    const sound = checkSeen(must(facts.get(cars, now.car), 'car of an observation'), observation, request, today);
    if (!sound.ok) return sound;
    if (JSON.stringify(observation) === JSON.stringify(now)) return ok({ entries: [], reply: { observation } });
    return ok({ entries: [newEntry(observationAmended, { ...observation, why })], reply: { observation } });
  },
});
