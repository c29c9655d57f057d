import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

/** An invented car in km, some 10 000 km a year, read every half year from 2023 to 2026-11-01 at 38 333 km. */
export function measuredHousehold(): MemoryHousehold {
  const household = memoryHousehold({ hemisphere: 'none' });
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2023-01-01') });
  household.must('car.add', { id: 'wren', name: 'Wren' });
  for (const [date, value] of [['2023-01-01', 0], ['2024-01-01', 10_000], ['2025-01-01', 20_000], ['2026-01-01', 30_000], ['2026-11-01', 38_333]] as const) {
    household.must('reading.record', { id: `r-${date}`, car: 'pip', value, date: day(date) });
  }
  return household;
}

type Measured = RequestOf<'measurement.add'>;

/** Adds a measurement of the car; pads of the front left unless said otherwise. */
export function measure(household: MemoryHousehold, date: string, value: number, more: Partial<Measured> = {}) {
  return household.must('measurement.add', { car: 'pip', what: 'pad', place: more.what === undefined || more.what === 'pad' ? 'front-left' : null, date: day(date), value, unit: 'mm', ...more }).measurement;
}

/** An item of front pads of which only the wear is known, unless an interval is given. */
export function padItem(household: MemoryHousehold, more: Partial<RequestOf<'item.add'>> = {}) {
  return household.must('item.add', {
    id: 'pads', car: 'pip', name: 'front brake pads', harm: 'safety', history: 'never-done', interval: { repeat: { months: 120, distance: null } },
    measure: { kind: 'pad', name: null, places: ['front-left', 'front-right'], limit: { value: 3, unit: 'mm' }, way: null }, ...more,
  }).item;
}

/** The window of an item. */
export function windowOf(household: MemoryHousehold, item = 'pads') {
  return household.must('due.show', {}).cars.find((car) => car.id === 'pip')?.windows.find((window) => window.item === item);
}

/** The series of a car. */
export function seriesOf(household: MemoryHousehold) {
  return household.must('car.show', { car: 'pip' }).measured;
}
