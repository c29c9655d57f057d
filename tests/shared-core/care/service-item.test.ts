import { describe, expect, test } from 'vitest';
import { serviceItems, serviceItemSchema, serviceItemSet } from '../../../shared-core/care/service-item.ts';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import type { Entry } from '../../../shared-core/journal/entry-kind.ts';
import { memoryFacts } from '../../../shared-core/journal/memory-facts.ts';
import { referencesOf } from '../../../shared-core/journal/replay.ts';

/** An entry as version 1 wrote it. Frozen: it is never brought up to date, for that is what the program must do. */
const VERSION_1: Entry = {
  seq: 0, at: '2026-11-25T09:00:08.000Z', kind: 'service-item-set', version: 1, subject: 'car/pip',
  values: {
    id: 'fluid', car: 'pip', name: 'Brake fluid', work: 'replace', harm: 'safety',
    interval: { first: { months: 36, distance: null }, repeat: { months: 24, distance: null } },
    anchor: { kind: 'completion' }, history: 'never-done', printedDate: null, source: null, confirmed: false, minutes: null, access: [],
    needs: [{ specification: 'dot-4', quantity: 1 }], place: 'either', garagePrice: null,
  },
};

describe('a service item entered before items were measured', () => {
  test('stands as one that is not measured, all else as it was', () => {
    const item = memoryFacts(entryKinds, [VERSION_1]).get(serviceItems, 'fluid');
    expect(item).toEqual({ ...VERSION_1.values, measure: null });
    expect(serviceItemSchema.safeParse(item).success).toBe(true);
  });

  test('refers to what it referred to', () => {
    expect(referencesOf(entryKinds, VERSION_1)).toEqual([{ family: 'car', id: 'pip' }, { family: 'specification', id: 'dot-4' }]);
  });

  test('is not what version 2 writes: without the field its values are refused', () => {
    expect([serviceItemSet.version, serviceItemSchema.safeParse(VERSION_1.values).success]).toEqual([2, false]);
  });

  test('a later version than this program knows is our bug', () => {
    expect(() => memoryFacts(entryKinds, [{ ...VERSION_1, version: 3 }])).toThrow('later version');
  });
});
