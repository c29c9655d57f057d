import { z } from 'zod';
import { itemKey } from '../care/match-item.ts';
import { powerSchema, type Car } from '../fleet/car.ts';
import { sameName } from '../fleet/find-car.ts';
import { must } from '../result/assert.ts';
import { idSchema } from '../result/id.ts';
import { plainText } from '../result/plain-text.ts';
import { americanText } from '../result/words/american.ts';
import { newStepSchema, type NewStep } from './sheet-step.ts';
import body from './starting-sheets/body.json' with { type: 'json' };
import brakes from './starting-sheets/brakes.json' with { type: 'json' };
import camper from './starting-sheets/camper.json' with { type: 'json' };
import diesel from './starting-sheets/diesel.json' with { type: 'json' };
import electrical from './starting-sheets/electrical.json' with { type: 'json' };
import engine from './starting-sheets/engine.json' with { type: 'json' };
import licensed from './starting-sheets/licensed.json' with { type: 'json' };
import olderCars from './starting-sheets/older-cars.json' with { type: 'json' };
import sharedSteps from './starting-sheets/shared-steps.json' with { type: 'json' };
import underneath from './starting-sheets/underneath.json' with { type: 'json' };
import wheels from './starting-sheets/wheels.json' with { type: 'json' };
import { taskSheetSchema } from './task-sheet.ts';

const shape = taskSheetSchema.shape;

const SHARED: ReadonlyMap<string, readonly NewStep[]> = new Map(Object.entries(z.record(idSchema, z.array(newStepSchema)).parse(sharedSteps)));

/** A step of its own, or the key of steps that several sheets share word for word: so a session that shares them says them once. */
const stepsSchema = z.array(z.union([idSchema, newStepSchema])).transform((steps) => steps.flatMap((one) => (typeof one === 'string' ? must(SHARED.get(one), `shared steps '${one}'`) : [one])));

const startingSheetSchema = z.strictObject({
  key: idSchema,
  name: plainText(80),
  /** Names of items that it is for. */
  items: z.array(plainText(80)).min(1),
  /** What drives the cars that have such a thing; null: any. */
  power: z.array(powerSchema).min(1).nullable().default(null),
  /** Not work to be done at home by everyone: a garage, or a licensed person. */
  by: z.enum(['anyone', 'skilled', 'licensed']).default('anyone'),
  steps: stepsSchema,
  hazards: shape.hazards.default([]),
  checks: shape.checks.default([]),
  reset: shape.reset.default(null),
  followUps: shape.followUps.default([]),
});

/** Steps to begin from, in our own words, without any figure of a car: those stand on its data card. */
export type StartingSheet = z.infer<typeof startingSheetSchema>;

/** Every starting sheet, in the order in which they are offered. Common practice, no source. */
export const STARTING_SHEETS: readonly StartingSheet[] = z.array(startingSheetSchema).parse([...engine, ...diesel, ...underneath, ...brakes, ...wheels, ...body, ...electrical, ...olderCars, ...licensed, ...camper]);

/** What the items of a sheet may be called: a household that changes its locale keeps the names it has, and the cautions go by them. */
const NAMES: ReadonlyMap<string, readonly string[]> = new Map(STARTING_SHEETS.map((sheet) => [sheet.key, [...sheet.items, ...sheet.items.map(americanText)]]));

/** The starting sheet of a key, or null. */
export function startingSheet(key: string): StartingSheet | null {
  return STARTING_SHEETS.find((sheet) => sheet.key === key) ?? null;
}

/** Whether a car can have what a sheet is about. @example fitsCar(sheet, { power: 'electric' }) */
export function fitsCar(sheet: StartingSheet, car: Pick<Car, 'power'>): boolean {
  return sheet.power === null || car.power === 'other' || sheet.power.includes(car.power);
}

/** The sheet whose items are called so, in British or American, among those that fit the car; the very name before one that only has the same words. Null where none is. */
export function sheetFor(itemName: string, car: Pick<Car, 'power'>): StartingSheet | null {
  const fitting = STARTING_SHEETS.filter((sheet) => fitsCar(sheet, car));
  const key = itemKey(itemName);
  const called = (sheet: StartingSheet) => NAMES.get(sheet.key) ?? [];
  return fitting.find((sheet) => called(sheet).some((name) => sameName(name, itemName))) ?? fitting.find((sheet) => called(sheet).some((name) => itemKey(name) === key)) ?? null;
}
