import { z } from 'zod';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { findTask } from '../sessions/task-ref.ts';
import { begunSession } from './begin-work.ts';
import { photoRemoved, photoTaken, stepPhotos, stepPhotoSchema, type StepPhoto } from './doing.ts';

const shape = stepPhotoSchema.shape;

/** So many papers a record holds, photographs among them. */
export const MOST_PAPERS = 40;

/** Puts a photograph, kept as a paper before, to the work on a car; closing puts it to the car's record. */
export const takePhoto = change({
  request: z.strictObject({ session: idSchema, car: shape.car, at: shape.at.default(null), paper: shape.paper }),
  reply: z.object({ photo: stepPhotoSchema }),
  decide: (facts, request, { newId }) => {
    const session = begunSession(facts, request.session, request.at === null ? [] : [request.at]);
    if (!session.ok) return session;
    const ofCar = session.value.tasks.some((task) => {
      const found = findTask(facts, task);
      return found.ok && found.value.car === request.car;
    });
    if (!ofCar) return refuse('car-not-in-session', {}, ['car']);
    const ofThisCar = photosOf(facts, request.session).filter((one) => one.car === request.car);
    const there = ofThisCar.find((one) => one.paper === request.paper);
    if (there !== undefined) return refuse('photo-there', {}, ['paper']);
    if (ofThisCar.length >= MOST_PAPERS) return refuse('photos-too-many', { most: MOST_PAPERS }, ['paper']);
    const photo: StepPhoto = { ...request, id: newId() };
    return ok({ entries: [newEntry(photoTaken, photo)], reply: { photo } });
  },
});

/** Takes a photograph from the work again; the paper itself stays. */
export const dropPhoto = change({
  request: z.strictObject({ session: idSchema, photo: idSchema }),
  reply: z.object({ photo: stepPhotoSchema }),
  decide: (facts, request) => {
    const session = begunSession(facts, request.session);
    if (!session.ok) return session;
    const photo = facts.get(stepPhotos, request.photo);
    if (photo === null || photo.session !== request.session) return refuse('unknown-photo', {}, ['photo']);
    return ok({ entries: [newEntry(photoRemoved, { id: photo.id, car: null })], reply: { photo } });
  },
});

/** The photographs of a session. */
export function photosOf(facts: Facts, session: string): readonly StepPhoto[] {
  return facts.all(stepPhotos).filter((one) => one.session === session);
}
