import { expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

// By hand: 90.00 asked; at home a check that needs nothing, 30 minutes at 12.00 an hour are 6.00.
test.each([
  { case: 'an hour counts nothing: minutes need not be known', hour: 0, minutes: null, saved: 9000 },
  { case: 'an hour counts something and minutes are not known: no sum', hour: 1200, minutes: null, saved: null },
  { case: 'minutes are known', hour: 1200, minutes: 30, saved: 8400 },
])('$case', ({ hour, minutes, saved }) => {
  const made = memoryHousehold();
  made.must('car.add', { id: 'pip', name: 'Pip' });
  made.must('item.add', { id: 'lights', car: 'pip', name: 'lights', work: 'check', interval: { repeat: { months: 12, distance: null } }, minutes });
  made.must('ledger-settings.set', { ownHourMinor: hour });
  made.must('quote.set', { car: 'pip', by: 'the garage', on: day('2026-11-01'), things: [{ id: 't', item: 'lights', text: 'lights' }], totalMinor: 9000 });
  expect(made.must('quotes.show', {}).quotes[0]?.savedMinor).toBe(saved);
});
