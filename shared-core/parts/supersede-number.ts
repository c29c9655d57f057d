import { z } from 'zod';
import type { Facts } from '../journal/facts.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { numberKey, numberSuperseded, successorsOf, superseded, supersededRemoved, supersededSchema, type Superseded } from './part-number.ts';
import { newId, removeWhole, setWhole } from './set-whole.ts';

const shape = supersededSchema.shape;

/** States that a number was replaced by another. A number has one successor, and no chain comes back to where it began. */
export const supersedeNumber = setWhole(
  numberSuperseded,
  z.strictObject({ ...shape, id: newId, since: shape.since.default(null), source: shape.source.default(null) }),
  supersededSchema,
  checkSuperseded,
);
export const removeSuperseded = removeWhole(supersededRemoved, superseded, 'unknown-superseded');

function checkSuperseded(facts: Facts, value: Superseded): Result<unknown> {
  const others = facts.all(superseded).filter((one) => one.id !== value.id);
  const already = others.find((one) => numberKey(one.old) === numberKey(value.old));
  if (already !== undefined) return refuse('superseded-already', { old: already.old, new: already.new }, ['old']);
  const chain = [value.new, ...successorsOf(others, value.new)];
  return chain.some((number) => numberKey(number) === numberKey(value.old)) ? refuse('number-loop', { old: value.old, new: value.new }, ['new']) : ok(null);
}
