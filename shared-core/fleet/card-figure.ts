import { z } from 'zod';
import { carSubject, refers, type EntryKind } from '../journal/entry-kind.ts';
import { factEntry } from '../journal/fact-entry.ts';
import { family } from '../journal/family.ts';
import { idSchema, sha256Schema } from '../result/id.ts';
import { longText, plainText } from '../result/plain-text.ts';
import { refusedBy } from '../result/refused-by.ts';
import { depthUnitSchema } from '../units/depth.ts';
import { pressureUnitSchema } from '../units/pressure.ts';
import { torqueUnitSchema } from '../units/torque.ts';
import { volumeUnitSchema } from '../units/volume.ts';
import { cars } from './car.ts';
import { jointSchema } from './known-figures.ts';

const typed = <Unit extends z.ZodType>(unit: Unit) => z.strictObject({ value: z.number(), unit });
const whole = z.int();

/** A metric thread as it is written: diameter, and pitch where it is known. */
export const threadSchema = z.string().regex(/^M([4-9]|1\d|2[0-4])(x\d(\.\d{1,2})?)?$/, refusedBy('not-a-thread'));

/** What a torque is on, as far as the keeper knows: a thread, a strength class, a spark plug's seat. */
export const jointDataSchema = z.strictObject({
  joint: jointSchema,
  thread: threadSchema.nullable(),
  strength: z.enum(['8.8', '10.9'], refusedBy('unknown-strength')).nullable(),
  seat: z.enum(['flat', 'conical']).nullable(),
});
export type JointData = z.infer<typeof jointDataSchema>;

/** A figure's value: as typed, and whole in the unit in which it is compared. */
export const figureValueSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('text'), text: plainText(200) }),
  z.strictObject({ kind: z.literal('volume'), typed: typed(volumeUnitSchema), microlitres: whole }),
  z.strictObject({ kind: z.literal('pressure'), typed: typed(pressureUnitSchema), pascals: whole }),
  z.strictObject({ kind: z.literal('depth'), typed: typed(depthUnitSchema), nanometres: whole }),
  z.strictObject({ kind: z.literal('torque'), typed: typed(torqueUnitSchema), millinewtonMetres: whole, on: jointDataSchema }),
]);
export type FigureValue = z.infer<typeof figureValueSchema>;

/** One of a car's own figures, of the known list or the keeper's own, with where it comes from. */
export const cardFigureSchema = z.strictObject({
  id: idSchema,
  car: idSchema,
  key: idSchema,
  /** The name of a figure of the keeper's own; null for a known one. */
  name: plainText(80).nullable(),
  value: figureValueSchema,
  /** Handbook page, maker's sheet; null where nobody has said. */
  source: plainText(120).nullable(),
  paper: sha256Schema.nullable(),
  note: longText(300),
  /** The keeper has looked again: an unlikely torque is as it is printed. */
  sure: z.boolean(),
});
export type CardFigure = z.infer<typeof cardFigureSchema>;

export const cardFigures = family('card-figure', 'fleet', cardFigureSchema);
export const cardFigureSet = factEntry('card-figure-set', cardFigures, {
  car: (figure) => figure.car,
  // Papers belong to a later stage, so they are named by their family.
  refersTo: (figure) => [...refers(cars, figure.car), ...(figure.paper === null ? [] : [{ family: 'paper', id: figure.paper }])],
});

const clearedSchema = cardFigureSchema.pick({ id: true, car: true });

/** A figure taken off the card: it stands as not entered. */
export const cardFigureCleared: EntryKind<z.infer<typeof clearedSchema>> = {
  kind: 'card-figure-cleared',
  version: 1,
  schema: clearedSchema,
  subject: ({ car }) => carSubject(car),
  apply: ({ id, car }) => [{ family: cardFigures.name, stage: cardFigures.stage, id, car, value: null }],
  refersTo: ({ id, car }) => [...refers(cars, car), ...refers(cardFigures, id)],
};
