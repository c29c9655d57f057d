import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { measureKindSchema, measureNameSchema, measurePlaceSchema } from '../care/measure-kind.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { factRemoval } from '../journal/fact-removal.ts';
import { family } from '../journal/family.ts';
import { cars } from '../fleet/car.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { sessions } from '../sessions/session.ts';
import { typedValueSchema } from '../units/measured-value.ts';
import { torqueUnitSchema } from '../units/torque.ts';
import { cautionKeySchema } from './caution-key.ts';
import { instantSchema } from './instant.ts';
import { accessKey } from './job-graph.ts';

/** A task by its key ("item/pip-oil"), and a step of its sheet: its id, or `whole`, or `check: ...` and `reset: ...` with their words for what is no step of it. */
export const stepRefSchema = z.strictObject({ task: plainText(80), step: plainText(320) });
export type StepRef = z.infer<typeof stepRefSchema>;

/** One name for a step of a task, an access under whatever spelling. @example stepKey({ task: 'item/pip-oil', step: 'open: Undertray' }) //=> 'item/pip-oil open: undertray' */
export function stepKey({ task, step }: StepRef): string {
  const [, way, access] = /^(open|close): (.*)$/su.exec(step) ?? [];
  return `${task} ${access === undefined ? step : `${way}: ${accessKey(access)}`}`;
}

/** Work on a session was begun: the cautions were read. It has the session's own id. `read`: which; where it is missing, nobody noted them, and they are read once more. */
export const begunSchema = z.strictObject({ id: idSchema, on: dateSchema, at: instantSchema, read: z.array(cautionKeySchema).max(40).optional() });
export const begunWork = family('begun-work', 'work', begunSchema);
export const workBegun = factEntry('work-begun', begunWork, { car: () => null, refersTo: (one) => refers(sessions, one.id) });

/** A step ticked, or left out with a word on why; it may be a step of several tasks at once. */
export const tickSchema = z.strictObject({ id: idSchema, session: idSchema, of: z.array(stepRefSchema).min(1).max(100), as: z.enum(['done', 'left-out']), note: longText(300), on: dateSchema, at: instantSchema });
export type Tick = z.infer<typeof tickSchema>;
export const ticks = family('tick', 'work', tickSchema);
export const stepTicked = factEntry('step-ticked', ticks, { car: () => null, refersTo: (tick) => refers(sessions, tick.session) });
export const tickRemoved = factRemoval('tick-removed', ticks);

/** What was read at a step: a thing measured, or the torque to which a joint was tightened. */
export const readAtStepSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('measured'), what: measureKindSchema, name: measureNameSchema.nullable(), place: measurePlaceSchema.nullable(), typed: typedValueSchema }),
  z.strictObject({ kind: z.literal('torque'), name: plainText(80), typed: z.strictObject({ value: z.number(), unit: torqueUnitSchema }) }),
]);
export const stepValueSchema = z.strictObject({ id: idSchema, session: idSchema, car: idSchema, at: stepRefSchema, read: readAtStepSchema, written: instantSchema, /** The keeper's day; values written before it was kept have the day of their instant. */ on: dateSchema.optional() });
export type StepValue = z.infer<typeof stepValueSchema>;
export const stepValues = family('step-value', 'work', stepValueSchema);
export const stepValueRead = factEntry('step-value-read', stepValues, { car: () => null, refersTo: (one) => [...refers(sessions, one.session), ...refers(cars, one.car)] });
export const stepValueRemoved = factRemoval('step-value-removed', stepValues);

/** A stretch of time for a task (null: what several share), until `to`; null while it runs. */
export const spanSchema = z.strictObject({ id: idSchema, session: idSchema, task: plainText(80).nullable(), from: instantSchema, to: instantSchema.nullable() });
export type Span = z.infer<typeof spanSchema>;
export const spans = family('span', 'work', spanSchema);
export const timeTaken = factEntry('time-taken', spans, { car: () => null, refersTo: (span) => refers(sessions, span.session) });

/** A photograph taken at a step, to go with the record. It has an id of its own, for one photograph may belong to two sessions. */
export const stepPhotoSchema = z.strictObject({ id: idSchema, session: idSchema, car: idSchema, at: stepRefSchema.nullable(), paper: sha256Schema });
export type StepPhoto = z.infer<typeof stepPhotoSchema>;
export const stepPhotos = family('step-photo', 'work', stepPhotoSchema);
export const photoTaken = factEntry('photo-taken', stepPhotos, {
  car: () => null,
  // Papers and observations belong to a later stage, so they are named by their family.
  refersTo: (one) => [...refers(sessions, one.session), ...refers(cars, one.car), { family: 'paper', id: one.paper }],
});
export const photoRemoved = factRemoval('photo-removed', stepPhotos);

/** Where in a session something was found. It has the observation's own id. */
export const findSchema = z.strictObject({ id: idSchema, session: idSchema, car: idSchema, at: stepRefSchema.nullable() });
export type Find = z.infer<typeof findSchema>;
export const finds = family('find', 'work', findSchema);
export const findMade = factEntry('find-made', finds, { car: () => null, refersTo: (one) => [...refers(sessions, one.session), ...refers(cars, one.car), { family: 'observation', id: one.id }] });
