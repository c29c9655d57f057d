import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** Two everyday cars, each with three yearly items never done and a test on 17 December. */
export function twoCars(): MemoryHousehold {
  const household = memoryHousehold();
  for (const car of ['pip', 'alder'] as const) {
    household.must('car.add', { id: car, name: car === 'pip' ? 'Pip' : 'Alder', firstRegistered: day('2020-11-01') });
    for (const item of ['oil', 'pads', 'fluid'] as const) household.must('item.add', { id: `${car}-${item}`, car, name: item, interval: { repeat: { months: 12, distance: null } }, history: 'never-done' });
    household.must('obligation.add', { id: `${car}-test`, car, kind: 'roadworthiness-test', lastValidDay: day('2026-12-17'), keepsDate: true });
  }
  return household;
}
