import { expect, test } from 'vitest';
import { writtenWhen } from '../../../shared-core/records/written-when.ts';
import { day } from '../calendar/day.ts';

// Source: our own definition; a week is seven days.
test.each([
  { case: 'the same day', date: '2026-11-20', at: '2026-11-20T23:59:59.999Z', reconstructed: false, when: 'same-day' },
  { case: 'a day before by UTC: entered in the morning, east of Greenwich', date: '2026-11-20', at: '2026-11-19T20:00:00.000Z', reconstructed: false, when: 'same-day' },
  { case: 'the next day', date: '2026-11-20', at: '2026-11-21T00:00:00.000Z', reconstructed: false, when: 'within-a-week' },
  { case: 'seven days after', date: '2026-11-20', at: '2026-11-27T08:00:00.000Z', reconstructed: false, when: 'within-a-week' },
  { case: 'eight days after', date: '2026-11-20', at: '2026-11-28T08:00:00.000Z', reconstructed: false, when: 'later' },
  { case: 'over a year\'s end', date: '2026-12-30', at: '2027-01-02T08:00:00.000Z', reconstructed: false, when: 'within-a-week' },
  { case: 'from memory, whenever it was written', date: '2026-11-20', at: '2026-11-20T08:00:00.000Z', reconstructed: true, when: 'reconstructed' },
])('$case: $when', ({ date, at, reconstructed, when }) => {
  expect(writtenWhen({ date: day(date), reconstructed }, at)).toBe(when);
});
