import { z } from 'zod';
import { newEntry, type EntryKind } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import type { Family } from '../journal/family.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { lotSchema, lotSet } from './lot.ts';
import { offerSchema, offerSet } from './offer.ts';
import { parts, partSchema, partSet, type Part } from './part.ts';
import { specifications, specificationSchema, specificationSet } from './specification.ts';
import { suppliers, supplierSchema, supplierSet } from './supplier.ts';

const newId = idSchema.optional();

/** An operation that states a whole fact of the household: a new one, or the one with that id anew. */
function setWhole<Value extends { readonly id: string }, Request extends z.ZodType<{ readonly id?: string | undefined }>>(
  kind: EntryKind<Value>,
  request: Request,
  whole: z.ZodType<Value>,
  check: (facts: Facts, value: Value) => Result<unknown>,
) {
  return change({
    request,
    reply: z.object({ set: whole }),
    decide: (facts, asked, moment) => {
      const value = whole.parse({ ...(asked as object), id: asked.id ?? moment.newId() });
      const sound = check(facts, value);
      return sound.ok ? ok({ entries: [newEntry<Value>(kind, value)], reply: { set: value } }) : sound;
    },
  });
}

/** Refuses an id that names nothing. */
function known(facts: Facts, family: Family<unknown>, id: string, field: string): Result<unknown> {
  return facts.get(family, id) === null ? refuse(`unknown-${family.name}`, { id }, [field]) : ok(id);
}

/** States what a need must meet. */
export const setSpecification = setWhole(
  specificationSet,
  z.strictObject({ ...specificationSchema.shape, id: newId, step: specificationSchema.shape.step.default(null), note: specificationSchema.shape.note.default('') }),
  specificationSchema,
  () => ok(null),
);

/** States a part, or a kit with its contents. */
export const setPart = setWhole(
  partSet,
  z.strictObject({ ...partSchema.shape, id: newId, number: partSchema.shape.number.default(null), meets: partSchema.shape.meets.default([]), contains: partSchema.shape.contains.default([]) }),
  partSchema,
  checkPart,
);

function checkPart(facts: Facts, part: Part): Result<unknown> {
  const specification = part.meets.find((id) => facts.get(specifications, id) === null);
  if (specification !== undefined) return refuse('unknown-specification', { id: specification }, ['meets']);
  for (const inside of part.contains) {
    const single = facts.get(parts, inside.part);
    if (single === null) return refuse('unknown-part', { id: inside.part }, ['contains']);
    if (single.contains.length > 0 || inside.part === part.id) return refuse('kit-in-kit', { id: inside.part }, ['contains']);
  }
  return ok(null);
}

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
  () => ok(null),
);

/** States an offer: a pack of a part at a supplier's price. */
export const setOffer = setWhole(
  offerSet,
  z.strictObject({ ...offerSchema.shape, id: newId, number: offerSchema.shape.number.default(null), most: offerSchema.shape.most.default(null), breaks: offerSchema.shape.breaks.default([]) }),
  offerSchema,
  (facts, offer) => {
    const supplier = known(facts, suppliers, offer.supplier, 'supplier');
    return supplier.ok ? known(facts, parts, offer.part, 'part') : supplier;
  },
);

/** States a lot on the shelf. */
export const setLot = setWhole(
  lotSet,
  z.strictObject({
    ...lotSchema.shape,
    id: newId,
    openedOn: lotSchema.shape.openedOn.default(null),
    expires: lotSchema.shape.expires.default(null),
    where: lotSchema.shape.where.default(null),
    paidMinor: lotSchema.shape.paidMinor.default(null),
  }),
  lotSchema,
  (facts, lot) => known(facts, parts, lot.part, 'part'),
);

