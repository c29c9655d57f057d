import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

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
