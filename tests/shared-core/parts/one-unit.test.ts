import { describe, expect, test } from 'vitest';
import { partsHousehold } from './parts-household.ts';

describe('a unit', () => {
  test.each([
    { case: 'a part meets it', state: () => partsHousehold(), id: 'oil', refused: true },
    { case: 'a task needs it', state: () => {
      const household = partsHousehold();
      household.must('specification.set', { id: 'grease', name: 'grease', unit: 'kilogram' });
      household.must('item.add', { car: 'pip', name: 'hinges', interval: { repeat: { months: 12, distance: null } }, needs: [{ specification: 'grease', quantity: 0.1 }] });
      return household;
    }, id: 'grease', refused: true },
    { case: 'nothing is counted in it', state: () => {
      const household = partsHousehold();
      household.must('specification.set', { id: 'grease', name: 'grease', unit: 'kilogram' });
      return household;
    }, id: 'grease', refused: false },
  ])('is changed only while nothing is counted in it: $case', ({ state, id, refused }) => {
    const household = state();
    const reply = household.call('specification.set', { id, name: 'renamed', unit: 'metre' });
    expect(reply.ok ? null : reply.refusal.code).toBe(refused ? 'unit-in-use' : null);
  });

  test('a specification in use is changed otherwise', () => {
    expect(partsHousehold().call('specification.set', { id: 'oil', name: 'oil of a new name', unit: 'litre' }).ok).toBe(true);
  });

  test('no part is counted in two', () => {
    const household = partsHousehold();
    expect(household.call('part.set', { name: 'Twin', meets: ['filter-pip', 'oil'] })).toMatchObject({ ok: false, refusal: { code: 'meets-two-units', path: ['meets', 1] } });
    expect(household.call('part.set', { name: 'Twin', meets: ['filter-pip', 'filter-alder'] }).ok).toBe(true);
  });
});

test('two suppliers are not called the same, a supplier may be stated anew', () => {
  const household = partsHousehold();
  expect(household.call('supplier.set', { name: 'north PARTS', leadDays: 1 })).toMatchObject({ ok: false, refusal: { code: 'supplier-named-already' } });
  expect(household.call('supplier.set', { id: 'north', name: 'North Parts', leadDays: 1 }).ok).toBe(true);
});
