import { z } from 'zod';
import type { Facts } from '../journal/facts.ts';
import { overlayFacts } from '../journal/overlay-facts.ts';
import { must } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { saysOnlyColour } from './colour-words.ts';
import { parts } from './part.ts';
import { checkMeets } from './set-part.ts';
import { newId, setWhole } from './set-whole.ts';
import { specificationSchema, specificationSet, type Specification } from './specification.ts';

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
  const after = overlayFacts(facts);
  after.lay(specificationSet.apply(specification));
  for (const part of facts.all(parts).filter((one) => one.meets.includes(specification.id))) {
    const sound = checkMeets(after, must(after.get(parts, part.id), 'part'));
    if (!sound.ok) return refuse(sound.refusal.code, sound.refusal.values, ['fluid']);
  }
  return ok(null);
}
