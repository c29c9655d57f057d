import { z } from 'zod';
import { sameName } from '../fleet/find-car.ts';
import { newEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { change } from '../journal/operation.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { neverMixRemoved, neverMixes, neverMixSchema, neverMixSet, type NeverMix } from './never-mix.ts';
import { parts } from './part.ts';
import { preferenceRemoved, preferences, preferenceSchema, preferenceSet, type Preference } from './part-preference.ts';
import { partsSettings, partsSettingsSchema, partsSettingsSet } from './parts-settings.ts';
import { allOf, known, newId, removeWhole, setWhole } from './set-whole.ts';
import { specifications } from './specification.ts';
import { suppliers, supplierSchema, supplierSet } from './supplier.ts';

/** States a supplier and the terms of delivery. */
export const setSupplier = setWhole(
  supplierSet,
  z.strictObject({
    ...supplierSchema.shape,
    id: newId,
    deliveryMinor: supplierSchema.shape.deliveryMinor.default(0),
    freeFromMinor: supplierSchema.shape.freeFromMinor.default(null),
    minimumMinor: supplierSchema.shape.minimumMinor.default(0),
  }),
  supplierSchema,
  (facts, supplier) => (facts.all(suppliers).some((one) => one.id !== supplier.id && sameName(one.name, supplier.name)) ? refuse('supplier-named-already', { supplier: supplier.name }, ['name']) : ok(null)),
);

/** States which of the parts that meet a specification one would rather have. */
export const setPreference = setWhole(
  preferenceSet,
  z.strictObject({ ...preferenceSchema.shape, mostMoreMinor: preferenceSchema.shape.mostMoreMinor.default(null) }),
  preferenceSchema,
  checkPreference,
);
export const removePreference = removeWhole(preferenceRemoved, preferences, 'unknown-preference');

function checkPreference(facts: Facts, preference: Preference): Result<unknown> {
  const strange = preference.parts.findIndex((id) => facts.get(parts, id)?.meets.includes(preference.id) !== true);
  const twice = preference.parts.findIndex((id, at) => preference.parts.indexOf(id) < at);
  return allOf(
    () => known(facts, specifications, preference.id, 'id'),
    () => (strange >= 0 ? refuse('preferred-does-not-meet', { part: preference.parts[strange] ?? '' }, ['parts', strange]) : ok(null)),
    () => (twice >= 0 ? refuse('id-twice', { list: 'parts', id: preference.parts[twice] ?? '' }, ['parts', twice]) : ok(null)),
  );
}

/** States two things that are not to be mixed. */
export const setNeverMix = setWhole(neverMixSet, z.strictObject({ ...neverMixSchema.shape, id: newId, source: neverMixSchema.shape.source.default(null) }), neverMixSchema, checkPair);
export const removeNeverMix = removeWhole(neverMixRemoved, neverMixes, 'unknown-mix-pair');

function checkPair(facts: Facts, { between: [a, b] }: NeverMix): Result<unknown> {
  const unknown = [a, b].find((side) => side.kind === 'specification' && facts.get(specifications, side.id) === null);
  if (unknown?.kind === 'specification') return refuse('unknown-specification', { id: unknown.id }, ['between']);
  return JSON.stringify(a) === JSON.stringify(b) ? refuse('mix-with-itself', {}, ['between']) : ok(null);
}

/** Changes how the household buys: only the fields given. */
export const setPartsSettings = change({
  request: partsSettingsSchema.omit({ id: true }).partial(),
  reply: z.object({ settings: partsSettingsSchema }),
  decide: (facts, request) => {
    const settings = partsSettingsSchema.parse({ ...partsSettings(facts), ...request });
    return ok({ entries: [newEntry(partsSettingsSet, settings)], reply: { settings } });
  },
});
