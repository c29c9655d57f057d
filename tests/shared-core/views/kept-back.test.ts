import { expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

test('what is put aside for a wish is not taken by another need, until the wish is let go', () => {
  const made = memoryHousehold();
  made.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-01-01') });
  made.must('specification.set', { id: 'lamp', name: 'lamp', unit: 'each' });
  made.must('part.set', { id: 'l1', name: 'lamp L1', meets: ['lamp'] });
  made.must('lot.set', { id: 'two-lamps', part: 'l1', quantity: 2, receivedOn: day('2026-01-01'), paidMinor: 800 });
  made.must('item.add', { id: 'lamps', car: 'pip', name: 'lamps', history: 'never-done', interval: { repeat: { months: 84, distance: null } }, needs: [{ specification: 'lamp', quantity: 2 }] });
  made.must('wish.set', { id: 'fog', car: 'pip', name: 'fog lamps', needs: [{ specification: 'lamp', quantity: 2 }] });
  const lacking = () => made.must('needs.show', { horizonDays: 366 }).needs.map((need) => [need.item, need.lacking]);
  expect(lacking()).toEqual([['lamps', 0]]);
  made.must('wish.put-aside', { wish: 'fog', lots: ['two-lamps'] });
  expect(lacking()).toEqual([['lamps', 2]]);
  made.must('wish.let-go', { wish: 'fog' });
  expect(lacking()).toEqual([['lamps', 0]]);
});
