import { expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold } from '../contract/memory-household.ts';

test('what is late counts 365 days of its rate, the dearest first; what is not late counts nothing', () => {
  const made = memoryHousehold();
  made.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-01-01') });
  const item = (id: string, harm: 'safety' | 'damage' | 'comfort', months: number) => made.must('item.add', { id: id.replace(' ', '-'), car: 'pip', name: id, harm, history: 'never-done', interval: { repeat: { months, distance: null } } });
  item('cabin filter', 'comfort', 12);
  item('brake fluid', 'safety', 36);
  item('coolant', 'damage', 120);
  // By hand: 200 and 10 a day are the rates until others are stated.
  expect(made.must('ledger.show', {}).waiting.map((one) => [one.name, one.aYearMinor])).toEqual([['brake fluid', 73_000], ['cabin filter', 3650]]);
  made.must('plan-settings.set', { lateMinorADay: { comfort: 300 } });
  expect(made.must('ledger.show', {}).waiting.map((one) => [one.name, one.aYearMinor])).toEqual([['cabin filter', 109_500], ['brake fluid', 73_000]]);
});
