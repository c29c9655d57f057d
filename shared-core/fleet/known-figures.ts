import { z } from 'zod';
import { must } from '../result/assert.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { sayOf } from '../result/words/say.ts';
import { powerSchema, type Car } from './car.ts';
import file from './known-figures.json' with { type: 'json' };

/** The parts of a data card, in the order in which it is read. */
export const figureGroupSchema = z.enum(['fluids', 'tyres', 'torques', 'raising', 'electrical', 'fits', 'own']);
export type FigureGroup = z.infer<typeof figureGroupSchema>;

/** What a figure is measured in; a text where it is no number. */
export const figureKindSchema = z.enum(['volume', 'torque', 'pressure', 'depth', 'text']);
export type FigureKind = z.infer<typeof figureKindSchema>;

/**
 * What a torque is on, which says what band it is held against: a bolt or nut in steel; something soft (aluminium, a drain
 * plug and its washer), which takes far less; a spark plug.
 */
export const jointSchema = z.enum(['bolt', 'soft', 'spark-plug']);
export type Joint = z.infer<typeof jointSchema>;

/** A figure that every card asks for, where the car has such a thing. No figure has a value here: none is ever invented. */
const knownFigureSchema = z.strictObject({
  key: idSchema,
  group: figureGroupSchema.exclude(['own']),
  kind: figureKindSchema,
  /** Where it is missed while it is not entered. */
  missed: z.array(idSchema).min(1),
  /** Names of service items that want it. */
  items: z.array(plainText(80)),
  notFor: z.array(powerSchema).default([]),
  onlyFor: z.array(powerSchema).nullable().default(null),
  joint: jointSchema.nullable().default(null),
});
/** `name` is what it is called in the locale that is spoken. */
export type KnownFigure = z.infer<typeof knownFigureSchema> & { readonly name: string };

/** Every known figure, in the order of a card. */
export const KNOWN_FIGURES: readonly KnownFigure[] = z.array(knownFigureSchema).parse(file.figures).map((figure) => ({
  ...figure,
  get name() {
    return sayOf(`figure-${figure.key}`);
  },
}));

/** The known figure of a key, or null where a keeper made the key. @example knownFigure('wheel-torque')?.kind //=> 'torque' */
export function knownFigure(key: string): KnownFigure | null {
  return KNOWN_FIGURES.find((figure) => figure.key === key) ?? null;
}

/** The known figures that a car of its power has. */
export function figuresFor(car: Pick<Car, 'power'>): readonly KnownFigure[] {
  return KNOWN_FIGURES.filter((figure) => !figure.notFor.includes(car.power) && (figure.onlyFor?.includes(car.power) ?? true));
}

/** The groups in order; own figures come last. */
export const FIGURE_GROUPS: readonly FigureGroup[] = [...z.array(figureGroupSchema).parse(file.groups), 'own'];

/** What a known torque is on. */
export function jointOf(figure: KnownFigure): Joint {
  return must(figure.joint, `joint of ${figure.key}`);
}
