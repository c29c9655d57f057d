import { z } from 'zod';
import { findCar } from '../fleet/find-car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { ok, refuse } from '../result/result.ts';
import { checkSeen } from './check-seen.ts';
import { observationNoted, observations, observationSchema, type Observation } from './observation.ts';
import { papers } from './paper.ts';
import { workRecords } from './work-record.ts';

const shape = observationSchema.shape;

/** Notes something seen that needs another look. */
export const noteObservation = change({
  request: z.strictObject({
    id: shape.id.optional(),
    car: z.string().min(1).max(80),
    date: shape.date.optional(),
    text: shape.text,
    severity: shape.severity.default('watch'),
    recheckOn: shape.recheckOn.default(null),
    record: shape.record.default(null),
    papers: shape.papers.default([]),
  }),
  reply: z.object({ observation: observationSchema }),
  decide: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const date = request.date ?? moment.today;
    const observation: Observation = { ...request, id: request.id ?? moment.newId(), car: car.value.id, date, closedBy: null, closedOn: null };
    const sound = checkSeen(car.value, observation, request, moment.today);
    if (!sound.ok) return sound;
    if (facts.get(observations, observation.id) !== null) return refuse('id-taken', { id: observation.id }, ['id']);
    if (observation.record !== null && facts.get(workRecords, observation.record) === null) return refuse('unknown-record', { record: observation.record }, ['record']);
    const strange = observation.papers.find((paper) => facts.get(papers, paper) === null);
    if (strange !== undefined) return refuse('unknown-paper', { paper: strange }, ['papers']);
    return ok({ entries: [newEntry(observationNoted, observation)], reply: { observation } });
  },
});

/** Closes an observation by the record that settled it. */
export const closeObservation = change({
  request: z.strictObject({ observation: shape.id, record: shape.id, on: shape.date.optional() }),
  reply: z.object({ observation: observationSchema }),
  decide: (facts, request, moment) => {
    const now = facts.get(observations, request.observation);
    if (now === null) return refuse('unknown-observation', { observation: request.observation }, ['observation']);
    if (now.closedBy !== null) return refuse('observation-closed', {}, ['observation']);
    const record = facts.get(workRecords, request.record);
    if (record === null || record.car !== now.car) return refuse('unknown-record', { record: request.record }, ['record']);
    const on = request.on ?? moment.today;
    if (on > moment.today) return refuse('date-in-future', { date: on }, ['on']);
    const observation: Observation = { ...now, closedBy: record.id, closedOn: on };
    return ok({ entries: [newEntry(observationNoted, observation)], reply: { observation } });
  },
});
