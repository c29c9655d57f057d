import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { usedOfLots } from '../../../shared-core/records/shelf-use.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

describe('what was used of a lot', () => {
  test('adds up to thousandths, where floating point does not', () => {
    // By hand: 0.1 + 0.2 is 0.30000000000000004 in floating point, 0.001 x 1000 + 1.001 x 1000 is 1001.9999999999999.
    const used = usedOfLots([{ lotsUsed: [{ lot: 'a', quantity: 0.1 }, { lot: 'b', quantity: 0.001 }] }, { lotsUsed: [{ lot: 'a', quantity: 0.2 }, { lot: 'b', quantity: 1.001 }] }]);
    expect([...used]).toEqual([['a', 0.3], ['b', 1.002]]);
  });

  test('is the same in any order', () => {
    const anyUse = fc.record({ lot: fc.constantFrom('a', 'b'), quantity: fc.integer({ min: 1, max: 100_000 }).map((n) => n / 1000) });
    fc.assert(fc.property(fc.array(anyUse), (uses) => {
      const sum = (lot: string) => uses.filter((use) => use.lot === lot).reduce((total, use) => total + Math.round(use.quantity * 1000), 0) / 1000;
      const used = usedOfLots([{ lotsUsed: uses.slice(1).reverse() }, { lotsUsed: uses.slice(0, 1) }]);
      expect([used.get('a') ?? 0, used.get('b') ?? 0]).toEqual([sum('a'), sum('b')]);
    }));
  });
});

/** Pip, and 5 litres of an oil on the shelf. */
function withOil(): MemoryHousehold {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip' });
  household.must('part.set', { id: 'oil', name: 'Oil' });
  household.must('lot.set', { id: 'can', part: 'oil', quantity: 5, receivedOn: day('2026-01-01') });
  return household;
}

const use = (household: MemoryHousehold, id: string, ...quantities: readonly number[]) =>
  household.call('record.add', { id, car: 'pip', lines: [{ name: 'Oil' }], lotsUsed: quantities.map((quantity) => ({ lot: 'can', quantity })) });

describe('taking from the shelf', () => {
  test('to the last drop and no further', () => {
    const household = withOil();
    expect([use(household, 'w1', 1.7).ok, use(household, 'w2', 1.6, 1.7).ok]).toEqual([true, true]);
    expect(use(household, 'w3', 0.001)).toMatchObject({ ok: false, refusal: { code: 'lot-used-up', values: { lot: 'can' } } });
  });

  test('twice in one record counts twice', () => {
    expect(use(withOil(), 'w1', 2.5, 2.501)).toMatchObject({ ok: false, refusal: { code: 'lot-used-up' } });
  });

  test('an amended record gives back what it took', () => {
    const household = withOil();
    use(household, 'w1', 4);
    household.must('record.amend', { id: 'w1', lotsUsed: [{ lot: 'can', quantity: 5 }], why: 'all of it' });
    household.must('record.amend', { id: 'w1', lotsUsed: [], why: 'another can' });
    expect(use(household, 'w2', 5).ok).toBe(true);
  });

  test.each([
    { quantity: 0, code: 'not-a-quantity' }, { quantity: -1, code: 'not-a-quantity' }, { quantity: 0.0005, code: 'quantity-too-fine' },
  ])('$quantity is refused: $code', ({ quantity, code }) => {
    expect(use(withOil(), 'w1', quantity)).toMatchObject({ ok: false, refusal: { code } });
  });

  test('an unknown lot is refused', () => {
    expect(withOil().call('record.add', { car: 'pip', lines: [{ name: 'Oil' }], lotsUsed: [{ lot: 'none', quantity: 1 }] })).toMatchObject({ ok: false, refusal: { code: 'unknown-lot' } });
  });
});
