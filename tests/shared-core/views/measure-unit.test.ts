import { expect, test } from 'vitest';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';
import { day } from '../calendar/day.ts';

/** A sheet that measures one thing. */
function measuring(locale: string, measure: object): MemoryHousehold {
  const household = memoryHousehold({ locale });
  household.must('car.add', { id: 'pip', name: 'Pip' });
  household.must('item.add', { id: 'look', car: 'pip', name: 'A look', interval: { repeat: { months: 12, distance: null } } });
  household.must('sheet.set', { item: 'look', steps: [{ text: 'Measure', measure: measure as never }] });
  return household;
}

const unit = (household: MemoryHousehold) => household.must('sheet.show', { item: 'look' }).job.blocks[0]?.steps[0]?.measure?.unit;

test.each([
  { locale: 'en-GB', kind: 'tread', unit: 'mm' },
  { locale: 'en-US', kind: 'tread', unit: '32nds' },
  { locale: 'en-GB', kind: 'brake-fluid-moisture', unit: '%' },
  { locale: 'en-GB', kind: 'coolant-protection', unit: 'C' },
  { locale: 'en-US', kind: 'coolant-protection', unit: 'F' },
  { locale: 'en-US', kind: 'battery-voltage', unit: 'V' },
  { locale: 'en-GB', kind: 'belt', unit: 'grade' },
])('$kind is read in $unit under $locale', ({ locale, kind, unit: wanted }) => {
  expect(unit(measuring(locale, { kind }))).toBe(wanted);
});

test('what was read last on this car says its unit, and what was dismissed does not', () => {
  const household = measuring('en-GB', { kind: 'tread', place: 'front-left' });
  household.must('measurement.add', { id: 'm', car: 'pip', what: 'tread', date: day('2026-11-01'), place: 'front-left', value: 8, unit: '32nds' });
  expect(unit(household)).toBe('32nds');
  household.must('measurement.correct', { id: 'm', dismissed: true });
  expect(unit(household)).toBe('mm');
});

test('of something of one\'s own the limit of an item says it, else nobody knows', () => {
  const household = measuring('en-GB', { kind: 'other', name: 'Play' });
  expect(unit(household)).toBeNull();
  household.must('item.add', { car: 'pip', name: 'Joints', interval: { repeat: { months: 12, distance: null } }, measure: { kind: 'other', name: 'play', places: [], limit: { value: 2, unit: 'mm' }, way: { by: 'distance', rises: true } } });
  expect(unit(household)).toBe('mm');
});
