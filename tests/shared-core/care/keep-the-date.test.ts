import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addMonths } from '../../../shared-core/calendar/add-months.ts';
import { addDays, daysBetween } from '../../../shared-core/calendar/local-date.ts';
import { daysLost, lastValidAfter, renewalOpens } from '../../../shared-core/care/keep-the-date.ts';
import { anyDate, day } from '../calendar/day.ts';

describe('the window in which a renewal keeps its day', () => {
  test.each([
    { last: '2026-05-15', opens: '2026-04-16', source: 'GOV.UK, its worked example (seen)' },
    { last: '2007-04-01', opens: '2007-03-02', source: 'text formerly published by the agency (seen, quoted)' },
    { last: '2008-03-01', opens: '2008-02-02', source: 'the same in another year (seen, quoted)' },
    { last: '2025-09-16', opens: '2025-08-17', source: 'a test station\'s page (seen, weak)' },
    { last: '2024-03-31', opens: '2024-03-01', source: 'computed: our own reading of month ends; no published example was found' },
    { last: '2023-03-31', opens: '2023-03-01', source: 'computed: our own reading of month ends' },
    { last: '2024-03-30', opens: '2024-03-01', source: 'computed: our own reading of month ends' },
    { last: '2024-03-29', opens: '2024-03-01', source: 'computed: our own reading of month ends' },
    { last: '2024-12-31', opens: '2024-12-01', source: 'computed: our own reading of month ends' },
    { last: '2024-07-31', opens: '2024-07-01', source: 'computed: our own reading of month ends' },
    { last: '2024-03-01', opens: '2024-02-02', source: 'computed' },
    { last: '2025-01-01', opens: '2024-12-02', source: 'computed' },
  ])('$last opens $opens ($source)', ({ last, opens }) => {
    expect(renewalOpens(day(last))).toBe(opens);
  });
});

describe('the new last valid day', () => {
  test.each([
    { case: 'on the first day that keeps it', last: '2026-05-15', passed: '2026-04-16', next: '2027-05-15', source: 'GOV.UK worked example (seen)' },
    { case: 'two days earlier', last: '2026-05-15', passed: '2026-04-14', next: '2027-04-13', source: 'GOV.UK counter-example (seen)' },
    { case: 'one day earlier', last: '2026-05-15', passed: '2026-04-15', next: '2027-04-14', source: 'by the same rule (computed)' },
    { case: 'on the last day', last: '2026-05-15', passed: '2026-05-15', next: '2027-05-15', source: 'by the same rule (computed)' },
    { case: 'a day late', last: '2026-05-15', passed: '2026-05-16', next: '2027-05-15', source: 'a year less a day from the day passed (computed)' },
    { case: 'a month late', last: '2026-05-15', passed: '2026-06-15', next: '2027-06-14', source: 'computed' },
    { case: 'the example of 2007', last: '2007-04-01', passed: '2007-03-02', next: '2008-04-01', source: 'formerly published by the agency (seen, quoted)' },
    { case: 'a leap day kept', last: '2024-02-29', passed: '2024-02-10', next: '2025-02-28', source: 'computed: our own reading of month ends' },
    { case: 'passed on a leap day, late', last: '2024-02-10', passed: '2024-02-29', next: '2025-02-27', source: 'computed: our own reading of month ends' },
  ])('$case: $next ($source)', ({ last, passed, next }) => {
    expect(lastValidAfter(day(last), day(passed), 12)).toBe(next);
  });

  // Source: Directive 2014/45/EU, four years and then every two (summary seen); the day itself by the rule above.
  test('of two years', () => {
    expect(lastValidAfter(day('2024-06-10'), day('2024-06-01'), 24)).toBe('2026-06-10');
  });

  const anyLast = anyDate(day('1950-01-01'), day('2150-01-01'));
  const anyTerm = fc.constantFrom(6, 12, 24, 36);

  test('is at most a month longer than the term, and never shorter than the term less a day', () => {
    fc.assert(fc.property(anyLast, fc.integer({ min: -500, max: 500 }), anyTerm, (last, days, months) => {
      const passed = addDays(last, days);
      const next = lastValidAfter(last, passed, months);
      expect(next >= addDays(addMonths(passed, months), -1)).toBe(true);
      expect(daysBetween(addMonths(passed, months), next)).toBeLessThanOrEqual(31);
    }));
  });

  test('of two days passed, the later never gives the earlier', () => {
    fc.assert(fc.property(anyLast, fc.integer({ min: -500, max: 500 }), fc.integer({ min: 0, max: 60 }), anyTerm, (last, days, more, months) => {
      expect(lastValidAfter(last, addDays(last, days), months) <= lastValidAfter(last, addDays(last, days + more), months)).toBe(true);
    }));
  });
});

describe('days that a renewal gives away', () => {
  // Source: the published rule's examples for 15 May (seen, reference section 1c); days counted by hand.
  test.each([
    { case: 'the first day that keeps the day', passed: '2026-04-16', valid: '2027-05-15', lost: 0 },
    { case: 'two days before it', passed: '2026-04-14', valid: '2027-04-13', lost: 32 },
    { case: 'the last valid day itself', passed: '2026-05-15', valid: '2027-05-15', lost: 0 },
    { case: 'after it ran out', passed: '2026-06-01', valid: '2027-05-31', lost: 0 },
    { case: 'early, but given a longer day than worked out', passed: '2026-04-14', valid: '2027-05-20', lost: 0 },
  ])('$case: $lost', ({ passed, valid, lost }) => {
    expect(daysLost(day('2026-05-15'), day(passed), day(valid), 12)).toBe(lost);
  });
});
