import { z } from 'zod';
import { serviceItems } from '../care/service-item.ts';
import { cardFigures } from '../fleet/card-figure.ts';
import { findCar } from '../fleet/find-car.ts';
import { figuresFor, knownFigure } from '../fleet/known-figures.ts';
import type { Car } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { refuse } from '../result/result.ts';
import { numberedSteps } from './numbered-steps.ts';
import { sheetReplySchema, writeSheet } from './set-sheet.ts';
import type { NewStep } from './sheet-step.ts';
import { fitsCar, startingSheet } from './starting-sheet.ts';
import { taskSheets } from './task-sheet.ts';

/** Begins the sheet of a service item from a starting sheet; it is the keeper's from then on. */
export const startSheet = change({
  request: z.strictObject({
    item: idSchema,
    from: idSchema,
    /** In place of the sheet that stands. */
    replace: z.boolean().default(false),
  }),
  reply: sheetReplySchema,
  decide: (facts, request) => {
    const item = facts.get(serviceItems, request.item);
    if (item === null) return refuse('unknown-item', { item: request.item }, ['item']);
    const car = findCar(facts, item.car);
    if (!car.ok) return car;
    const from = startingSheet(request.from);
    if (from === null) return refuse('unknown-starting-sheet', { sheet: request.from }, ['from']);
    if (!fitsCar(from, car.value)) return refuse('sheet-not-for-car', { sheet: from.name, car: car.value.name }, ['from']);
    const standing = facts.get(taskSheets, item.id);
    if (standing !== null && !request.replace) return refuse('sheet-stands', { item: item.name }, ['item']);
    const { hazards, checks, reset, followUps } = from;
    const steps = from.steps.map((step) => ofCar(facts, car.value, namedAs(item.access, step)));
    return writeSheet(facts, item, { startedFrom: from.key, hazards, checks, reset, followUps, note: '', steps: numberedSteps(steps, standing?.steps ?? []) });
  },
});

/** An access takes the spelling that the item gives it ("glovebox" for "glove box"), so that it is one with that of other items. */
function namedAs(names: readonly string[], step: NewStep): NewStep {
  const letters = (name: string) => name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
  const { access } = step;
  if (access === null) return step;
  return { ...step, access: { ...access, name: names.find((name) => letters(name) === letters(access.name)) ?? access.name } };
}

/** Without figures that such a car's card does not have. */
function ofCar(facts: Facts, car: Car, step: NewStep): NewStep {
  const card = facts.ofCar(cardFigures, car.id);
  const has = (key: string) => {
    const known = knownFigure(key);
    return known === null || figuresFor(car).includes(known) || card.some((one) => one.key === key);
  };
  const held = <Ref extends { readonly figure: string } | null>(ref: Ref): Ref | null => (ref === null || has(ref.figure) ? ref : null);
  return {
    ...step,
    torques: step.torques.filter((one) => one.by === 'own' || has(one.figure)),
    fluids: step.fluids.map((one) => ({ ...one, specification: held(one.specification), quantity: held(one.quantity) })),
    figures: step.figures.filter((one) => has(one.figure)),
  };
}
