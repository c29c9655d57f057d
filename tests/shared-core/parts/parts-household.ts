import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** Two cars that take the same oil, and filters of their own; two suppliers of oil, filters, a kit, and a battery with a deposit. On 2026-11-25. */
export function partsHousehold(): MemoryHousehold {
  const household = memoryHousehold();
  for (const id of ['pip', 'alder']) household.must('car.add', { id, name: id === 'pip' ? 'Pip' : 'Alder', firstRegistered: day('2020-12-20') });
  household.must('specification.set', { id: 'oil', name: 'engine oil', unit: 'litre' });
  for (const id of ['filter-pip', 'filter-alder', 'battery', 'washer']) household.must('specification.set', { id, name: id, unit: 'each', step: 1 });
  household.must('part.set', { id: 'can', name: 'Fern oil', meets: ['oil'] });
  household.must('part.set', { id: 'f1', name: 'Filter F1', number: 'F1', meets: ['filter-pip'] });
  household.must('part.set', { id: 'f2', name: 'Filter F2', number: 'F2', meets: ['filter-alder'] });
  household.must('part.set', { id: 'w1', name: 'Washer W1', meets: ['washer'] });
  household.must('part.set', { id: 'b1', name: 'Battery B1', meets: ['battery'] });
  household.must('part.set', { id: 'kit', name: 'Service kit', contains: [{ part: 'f1', quantity: 1 }, { part: 'w1', quantity: 2 }] });
  household.must('supplier.set', { id: 'north', name: 'North Parts', deliveryMinor: 500, freeFromMinor: 10_000, leadDays: 3 });
  household.must('supplier.set', { id: 'south', name: 'South Stores', deliveryMinor: 0, minimumMinor: 2000, leadDays: 10 });
  const offer = (id: string, supplier: string, part: string, quantity: number, priceMinor: number, more: Partial<RequestOf<'offer.set'>> = {}) => household.must('offer.set', { id, supplier, part, quantity, priceMinor, seenOn: day('2026-11-01'), ...more });
  offer('n-can', 'north', 'can', 5, 3500);
  offer('n-f1', 'north', 'f1', 1, 800);
  offer('n-f2', 'north', 'f2', 1, 900);
  offer('n-w1', 'north', 'w1', 10, 300);
  offer('n-b1', 'north', 'b1', 1, 7000, { depositMinor: 1000 });
  offer('n-kit', 'north', 'kit', 1, 860);
  offer('s-can', 'south', 'can', 5, 3000);
  return household;
}
