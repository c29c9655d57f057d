import { z } from 'zod';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import type { Facts } from '../journal/facts.ts';
import { overlayFacts } from '../journal/overlay-facts.ts';
import { must } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { saysOnlyColour } from './colour-words.ts';
import { parts } from './part.ts';
import { checkMeets } from './set-part.ts';
import { newId, setWhole } from './set-whole.ts';
import { specifications, specificationSchema, specificationSet, type Specification } from './specification.ts';

const shape = specificationSchema.shape;

/** States what a need must meet. A colour is no specification, and no part that meets it may come to meet what never goes with it. */
export const setSpecification = setWhole(
  specificationSet,
  z.strictObject({ ...shape, id: newId, asks: shape.asks.default([]), fluid: shape.fluid.default(null), mix: shape.mix.default(false), step: shape.step.default(null), note: shape.note.default('') }),
  specificationSchema,
  checkSpecification,
);

function checkSpecification(facts: Facts, specification: Specification): Result<unknown> {
  const bare = specification.asks.findIndex(({ text }) => saysOnlyColour(text));
  if (bare >= 0) return refuse('colour-is-no-specification', { text: specification.asks[bare]?.text ?? '' }, ['asks', bare, 'text']);
  if (specification.asks.length === 0 && saysOnlyColour(specification.name)) return refuse('colour-is-no-specification', { text: specification.name }, ['name']);
  const unit = checkUnitKept(facts, specification);
  if (!unit.ok) return unit;
  const after = overlayFacts(facts);
  after.lay(specificationSet.apply(specification));
  for (const part of facts.all(parts).filter((one) => one.meets.includes(specification.id))) {
    const sound = checkMeets(after, must(after.get(parts, part.id), 'part'));
    if (!sound.ok) return refuse(sound.refusal.code, sound.refusal.values, ['fluid']);
  }
  return ok(null);
}

/** A unit stays while anything is counted in it: the parts that meet the specification, and what tasks need of it. */
function checkUnitKept(facts: Facts, { id, unit }: Specification): Result<unknown> {
  const before = facts.get(specifications, id);
  if (before === null || before.unit === unit) return ok(null);
  const user = facts.all(parts).find((part) => part.meets.includes(id))?.name ?? facts.all(cars).flatMap((car) => facts.ofCar(serviceItems, car.id)).find((item) => item.needs.some((need) => need.specification === id))?.name;
  return user === undefined ? ok(null) : refuse('unit-in-use', { user, unit: before.unit }, ['unit']);
}
