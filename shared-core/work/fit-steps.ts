import type { ServiceItem } from '../care/service-item.ts';
import { cardFigures } from '../fleet/card-figure.ts';
import type { Car } from '../fleet/car.ts';
import { figuresFor, knownFigure } from '../fleet/known-figures.ts';
import type { Facts } from '../journal/facts.ts';
import type { NewStep } from './sheet-step.ts';

/** Steps that come from elsewhere as they fit a car's item: accesses in the item's spelling, without figures that such a car's card does not have. */
export function fitSteps(facts: Facts, car: Car, item: Pick<ServiceItem, 'access'>, steps: readonly NewStep[]): NewStep[] {
  return steps.map((step) => ofCar(facts, car, namedAs(item.access, step)));
}

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
