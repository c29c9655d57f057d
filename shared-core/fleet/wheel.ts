import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { refers } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { cars } from './car.ts';

/** Where on a car something is: a corner, an axle. */
export const PLACES_ON_CAR = ['front-left', 'front-right', 'rear-left', 'rear-right', 'front', 'rear'] as const;

/** Where a wheel is; `off` is away from the car: in store, or gone. */
export const wheelPlaceSchema = z.enum(['front-left', 'front-right', 'rear-left', 'rear-right', 'spare', 'off'], refusedBy('unknown-wheel-place'));
export type WheelPlace = z.infer<typeof wheelPlaceSchema>;

/** A wheel with its tyre, known by a mark of its own wherever it runs; a new tyre makes another wheel of it. */
export const wheelSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  /** The keeper's mark: "A", "winter 3". */
  name: plainText(40),
  /** The week and year moulded into the tyre: the last group of its identification number, three or four digits. */
  dateCode: z.string().regex(/^\d{3,4}$/, refusedBy('not-a-tyre-code')).nullable(),
  /** As printed on the tyre. */
  size: plainText(40).nullable(),
  note: longText(500),
});
export type Wheel = z.infer<typeof wheelSchema>;

export const wheels = family('wheel', 'fleet', wheelSchema);
export const wheelSet = factEntry('wheel-set', wheels, {
  car: (wheel) => wheel.car,
  refersTo: (wheel) => refers(cars, wheel.car),
});

/** From a day on, a wheel is in a place. */
export const wheelMoveSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  wheel: idSchema,
  date: dateSchema,
  place: wheelPlaceSchema,
});
export type WheelMove = z.infer<typeof wheelMoveSchema>;

export const wheelMoves = family('wheel-move', 'fleet', wheelMoveSchema);
export const wheelMoved = factEntry('wheel-moved', wheelMoves, {
  car: (move) => move.car,
  refersTo: (move) => [...refers(cars, move.car), ...refers(wheels, move.wheel)],
});
