import type { z } from 'zod';
import { carSubject, put, refers, type EntryKind } from '../journal/entry-kind.ts';
import { longText } from '../result/plain-text.ts';
import { observationNoted, observations, observationSchema } from './observation.ts';

/** A correction of an observation: the whole of it as it should read, and why, where that was said. The original entry stays in the journal. */
export const observationAmendedSchema = observationSchema.extend({ why: longText(300) });
export type ObservationAmended = z.infer<typeof observationAmendedSchema>;

export const observationAmended: EntryKind<ObservationAmended> = {
  kind: 'observation-amended',
  version: 1,
  schema: observationAmendedSchema,
  subject: (values) => carSubject(values.car),
  apply: ({ why: _why, ...observation }) => [put(observations, observation, observation.car)],
  refersTo: ({ why: _why, ...observation }) => [...refers(observations, observation.id), ...observationNoted.refersTo(observation)],
};
