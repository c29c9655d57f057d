import { z } from 'zod';
import { serviceItems } from '../care/service-item.ts';
import { cardFigures } from '../fleet/card-figure.ts';
import { findCar } from '../fleet/find-car.ts';
import { knownFigure } from '../fleet/known-figures.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { figuresOf } from './figure-refs.ts';
import { fitSteps } from './fit-steps.ts';
import { numberedStepsOf } from './numbered-steps.ts';
import { sheetReplySchema, writeSheet } from './set-sheet.ts';
import type { FigureRef, NewStep, SheetStep } from './sheet-step.ts';
import { taskSheets, type TaskSheet } from './task-sheet.ts';

/** What did not come along: names of the keeper's own torques, which are another car's, and of figures that such a car's card does not have. */
const leftOutSchema = z.object({ torques: z.array(z.string()), figures: z.array(z.string()) });

/** Writes the sheet of a service item as that of another one is; what refers to the data card takes this car's card. */
export const copySheet = change({
  request: z.strictObject({
    item: idSchema,
    /** The item whose sheet is copied. */
    from: idSchema,
    /** In place of the sheet that stands. */
    replace: z.boolean().default(false),
  }),
  reply: sheetReplySchema.extend({ leftOut: leftOutSchema }),
  decide: (facts, request) => {
    const item = facts.get(serviceItems, request.item);
    if (item === null) return refuse('unknown-item', { item: request.item }, ['item']);
    if (request.from === item.id) return refuse('sheet-copy-itself', {}, ['from']);
    const from = facts.get(taskSheets, request.from);
    if (from === null) return refuse('no-sheet', { item: facts.get(serviceItems, request.from)?.name ?? request.from }, ['from']);
    const car = findCar(facts, item.car);
    if (!car.ok) return car;
    const standing = facts.get(taskSheets, item.id);
    if (standing !== null && !request.replace) return refuse('sheet-stands', { item: item.name }, ['item']);
    const torques = from.car === item.car ? [] : from.steps.flatMap((step) => step.torques.flatMap((one) => (one.by === 'own' ? [one.name] : [])));
    const before = from.steps.map((step) => carriedOver(facts, from, item.car, step));
    const steps = fitSteps(facts, car.value, item, before);
    const { startedFrom, hazards, checks, reset, followUps, note } = from;
    const written = writeSheet(facts, item, { startedFrom, hazards, checks, reset, followUps, note, steps: numberedStepsOf(facts, item, steps) });
    return written.ok ? ok({ ...written.value, reply: { ...written.value.reply, leftOut: { torques, figures: lost(before, steps) } } }) : written;
  },
});

/** A step as it goes to another sheet: without its id; on another car without the keeper's own torques, and figures of the keeper's own by their name. */
function carriedOver(facts: Facts, from: TaskSheet, car: string, { id: _id, ...step }: SheetStep): NewStep {
  if (from.car === car) return step;
  const card = facts.ofCar(cardFigures, from.car);
  const named = <Ref extends FigureRef>(ref: Ref): Ref => (knownFigure(ref.figure) === null ? { ...ref, name: ref.name ?? card.find((one) => one.key === ref.figure)?.name ?? null } : ref);
  return {
    ...step,
    torques: step.torques.flatMap((one) => (one.by === 'own' ? [] : [named(one)])),
    fluids: step.fluids.map((one) => ({ ...one, specification: one.specification && named(one.specification), quantity: one.quantity && named(one.quantity) })),
    figures: step.figures.map(named),
  };
}

/** Names of the figures that were there before and are there no more, once each. */
function lost(before: readonly NewStep[], after: readonly NewStep[]): string[] {
  const kept = new Set(after.flatMap(figuresOf).map(({ ref }) => ref.figure));
  const gone = before.flatMap(figuresOf).map(({ ref }) => ref).filter((ref) => !kept.has(ref.figure));
  return [...new Set(gone.map((ref) => knownFigure(ref.figure)?.name ?? ref.name ?? ref.figure))];
}
