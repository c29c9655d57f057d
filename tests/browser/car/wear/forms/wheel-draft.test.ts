import { expect, test } from 'vitest';
import { wheelDraft } from '../../../../../renderer/car/wear/forms/wheel-draft.ts';
import { day } from '../../../../shared-core/calendar/day.ts';
import { memoryHousehold } from '../../../../shared-core/contract/memory-household.ts';

const CORNERS = ['front-left', 'front-right', 'rear-left', 'rear-right'] as const;

function viewWith(names: readonly string[]) {
  const household = memoryHousehold();
  household.must('car.add', { id: 'pip', name: 'Pip' });
  names.forEach((name, at) => household.must('wheel.add', { car: 'pip', name, place: CORNERS[at] ?? 'off', on: day('2025-04-01'), dateCode: '2612', size: '195/55 R16 87H' }));
  return household.must('car.show', { car: 'pip' });
}

/** Our own rule: a new wheel begins where the one before it ended. */
test.each([
  { case: 'the first', names: [], begins: { name: 'A', place: 'front-left', on: '2026-11-25', dateCode: '', size: '' } },
  { case: 'the next letter, corner, code and size', names: ['A'], begins: { name: 'B', place: 'front-right', on: '2025-04-01', dateCode: '2612', size: '195/55 R16 87H' } },
  { case: 'the next number', names: ['winter 1', 'winter 2', 'winter 3'], begins: { name: 'winter 4', place: 'rear-right' } },
  { case: 'all corners taken: off the car, today, of a tyre of its own', names: ['A', 'B', 'C', 'D'], begins: { name: 'E', place: 'off', on: '2026-11-25', dateCode: '', size: '195/55 R16 87H' } },
  { case: 'a mark without an order has none after it', names: ['dented'], begins: { name: '', place: 'front-right' } },
  { case: 'nor has the last letter', names: ['Z'], begins: { name: '' } },
])('$case', ({ names, begins }) => expect(wheelDraft(viewWith(names), null)).toMatchObject(begins));

test('a wheel that is there opens as it stands', () => {
  const view = viewWith(['A']);
  expect(wheelDraft(view, view.wheels[0]?.wheel ?? null)).toMatchObject({ name: 'A', dateCode: '2612', size: '195/55 R16 87H', note: '' });
});
