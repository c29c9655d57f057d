import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { wishes, type Wish } from '../../../shared-core/ledger/wish.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { day } from '../calendar/day.ts';
import type { MemoryHousehold } from '../contract/memory-household.ts';
import { partsHousehold } from '../parts/parts-household.ts';

/** The household of parts, with springs and a radio to be had: springs of north at 120.00 a pair, of south at 118.00; a radio of north at 80.00. On 2026-11-25. */
export function wishHousehold(): MemoryHousehold {
  const household = partsHousehold();
  for (const id of ['springs', 'radio', 'clips']) household.must('specification.set', { id, name: id, unit: 'each', step: 1 });
  household.must('part.set', { id: 'sp', name: 'Springs SP', meets: ['springs'] });
  household.must('part.set', { id: 'ra', name: 'Radio RA', meets: ['radio'] });
  const offer = (id: string, supplier: string, part: string, priceMinor: number) => household.must('offer.set', { id, supplier, part, quantity: 1, priceMinor, seenOn: day('2026-11-01') });
  offer('n-sp', 'north', 'sp', 12_000);
  offer('s-sp', 'south', 'sp', 11_800);
  offer('n-ra', 'north', 'ra', 8000);
  return household;
}

/** Makes a wish of the car Pip with one of each of these needs. */
export function wishFor(household: MemoryHousehold, id: string, needs: readonly string[], more: Partial<RequestOf<'wish.set'>> = {}): Wish {
  return household.must('wish.set', { id, car: 'pip', name: id, needs: needs.map((specification) => ({ specification, quantity: 1 })), ...more }).set;
}

/** A wish as it stands. */
export function standing(household: MemoryHousehold, id: string): Wish {
  return must(household.facts().get(wishes, id), 'wish');
}
