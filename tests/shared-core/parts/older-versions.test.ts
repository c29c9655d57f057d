import { describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import type { Entry } from '../../../shared-core/journal/entry-kind.ts';
import { family, type Family } from '../../../shared-core/journal/family.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import { lotSchema } from '../../../shared-core/parts/lot.ts';
import { offerSchema } from '../../../shared-core/parts/offer.ts';
import { partSchema } from '../../../shared-core/parts/part.ts';
import { specificationSchema } from '../../../shared-core/parts/specification.ts';

/** Entries as version 1 wrote them. Frozen: they are never brought up to date, for that is what the program must do. */
const VERSION_1 = [
  { kind: 'specification-set', family: 'specification', schema: specificationSchema, values: { id: 'oil-a', name: 'oil A', unit: 'litre', step: null, note: '' }, more: { asks: [], fluid: null, mix: false } },
  { kind: 'part-set', family: 'part', schema: partSchema, values: { id: 'can', name: 'oil', number: null, meets: ['oil-a'], contains: [] }, more: { stated: [], keepsOpenedDays: null } },
  { kind: 'offer-set', family: 'offer', schema: offerSchema, values: { id: 'o1', supplier: 's1', part: 'can', number: null, quantity: 5, priceMinor: 3499, most: null, breaks: [], seenOn: '2026-11-01' }, more: { taxAdded: null, depositMinor: 0, withdrawnOn: null } },
  { kind: 'lot-set', family: 'lot', schema: lotSchema, values: { id: 'l1', part: 'can', quantity: 5, receivedOn: '2026-01-02', openedOn: null, expires: null, where: null, paidMinor: 3499 }, more: { keepsOpenedDays: null, order: null } },
] as const;

describe.each(VERSION_1)('an entry $kind of version 1', ({ kind, family: name, schema, values, more }) => {
  const entry = { seq: 0, at: '2026-11-25T09:00:08.000Z', kind, version: 1, subject: 'household', values } as unknown as Entry;

  test('stands with what was not known then, all else as it was', () => {
    const value = memoryFacts(entryKinds, [entry]).get(family(name, 'parts', schema as z.ZodType) as Family<unknown>, values.id);
    expect(value).toEqual({ ...values, ...more });
    expect(schema.safeParse(value).success).toBe(true);
  });

  test('is not what version 2 writes', () => {
    expect([entryKinds.get(kind)?.version, schema.safeParse(values).success]).toEqual([2, false]);
  });
});
