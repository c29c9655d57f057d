import { describe, expect, test } from 'vitest';
import { leadTimes, noticeFor } from '../../../shared-core/views/notice-days.ts';
import { day } from '../calendar/day.ts';
import { every, itemOf } from '../care/limit-examples.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

/** Two suppliers, a slow and a quick one; an oil of each, and a kit of the slow one that holds a filter. */
function shop() {
  const household = memoryHousehold();
  household.must('specification.set', { id: 'oil-a', name: 'Oil A', unit: 'litre' });
  household.must('specification.set', { id: 'filter-a', name: 'Filter A', unit: 'each' });
  household.must('part.set', { id: 'oil', name: 'Oil', meets: ['oil-a'] });
  household.must('part.set', { id: 'filter', name: 'Filter', meets: ['filter-a'] });
  household.must('part.set', { id: 'kit', name: 'Kit', contains: [{ part: 'filter', quantity: 1 }] });
  household.must('supplier.set', { id: 'slow', name: 'Slow', leadDays: 20 });
  household.must('supplier.set', { id: 'quick', name: 'Quick', leadDays: 2 });
  for (const [id, supplier, part] of [['o1', 'slow', 'oil'], ['o2', 'quick', 'oil'], ['o3', 'slow', 'kit']] as const) household.must('offer.set', { id, supplier, part, quantity: 1, priceMinor: 100, seenOn: day('2026-11-01') });
  return leadTimes(household.facts());
}

describe('notice', () => {
  test('the shortest lead of any offer counts, kits opened', () => {
    expect([...shop()].sort()).toEqual([['filter-a', 20], ['oil-a', 2]]);
  });

  // Source: our own definition: the longest of the supplier's lead and a week, the place's booking notice, 14 days.
  test.each([
    { case: 'nothing needed', needs: [], place: 'home', days: 14 },
    { case: 'a quick part', needs: ['oil-a'], place: 'home', days: 14 },
    { case: 'a slow part and a week', needs: ['filter-a'], place: 'home', days: 27 },
    { case: 'the slowest of all parts', needs: ['oil-a', 'filter-a'], place: 'home', days: 27 },
    { case: 'a part that nobody offers', needs: ['none'], place: 'home', days: 14 },
    { case: 'a garage', needs: [], place: 'garage', days: 14 },
  ] as const)('$case: $days days', ({ needs, place, days }) => {
    expect(noticeFor(itemOf(every(12), { place, needs: needs.map((specification) => ({ specification, quantity: 1 })) }), shop())).toBe(days);
  });
});
