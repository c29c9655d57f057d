import { describe, expect, test } from 'vitest';
import { datePattern, readDate } from '../../../renderer/ui/form/read-date.ts';
import { householdWords } from '../../../renderer/ui/household-words.ts';

/** Source for all: worked by hand from the stated rule; the order of a locale is the runtime's (CLDR). */
describe('a date as typed', () => {
  test.each([
    ['1/3/2026', 'en-GB', '2026-03-01'],
    ['1/3/2026', 'en-US', '2026-01-03'],
    ['01.03.2026', 'en-GB', '2026-03-01'],
    ['1-3-2026', 'en-GB', '2026-03-01'],
    ['1 3 2026', 'en-GB', '2026-03-01'],
    ['2026-03-01', 'en-US', '2026-03-01'],
    ['2026/3/1', 'en-GB', '2026-03-01'],
    ['1 mar 2026', 'en-US', '2026-03-01'],
    ['March 1, 2026', 'en-GB', '2026-03-01'],
    ['29 Feb 2024', 'en-GB', '2024-02-29'],
    ['3 May 1972', 'en-GB', '1972-05-03'],
  ])('%j in %s', (text, locale, date) => expect(readDate(text, locale)).toBe(date));

  test.each(['', '1/3', '1/3/26', '29 Feb 2026', '13/13/2026', '1 ma 2026', '1 foo 2026', '2026', '1/3/20266', '3 May 5 2026'])('%j is none', (text) => expect(readDate(text, 'en-GB')).toBeNull());

  test.each(['en-GB', 'en-US', 'en-CA', 'en-ZA', 'en-AU'])('as %s shows it, is read again as it was', (locale) => {
    const words = householdWords(locale, 'GBP');
    for (const date of ['2026-11-25', '2026-09-05', '2024-02-29', '1999-05-01']) expect(readDate(words.date(date), locale)).toBe(date);
  });
});

test.each([['en-GB', 'dd/mm/yyyy'], ['en-US', 'mm/dd/yyyy']])('the pattern in %s is %s', (locale, pattern) => expect(datePattern(locale)).toBe(pattern));
