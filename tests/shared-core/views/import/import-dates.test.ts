import { describe, expect, test } from 'vitest';
import { findDateOrder } from '../../../../shared-core/views/import/import-dates.ts';
import { day } from '../../calendar/day.ts';

const TODAY = day('2026-11-25');
const find = (texts: readonly string[], more: { readonly values?: readonly number[]; readonly chosen?: 'dmy' | 'mdy'; readonly locale?: string } = {}) =>
  findDateOrder({ dates: texts.map((text, at) => ({ line: at + 2, text, value: more.values?.[at] ?? null })), today: TODAY, chosen: more.chosen ?? null, locale: more.locale ?? 'en-GB' });

describe('the order of dates', () => {
  test.each([
    { case: 'one day above 12 tells', texts: ['3/4/2024', '25/3/2024'], value: 'dmy', source: 'no 25th month' },
    { case: 'one month field above 12 tells', texts: ['3/4/2024', '3/25/2024'], value: 'mdy', source: 'no 25th month' },
    { case: 'the year first tells', texts: ['2024-03-04'], value: 'ymd', source: 'ISO 8601, from memory' },
    { case: 'names of months tell, and no order is needed', texts: ['3 Apr 2024'], value: null, source: 'ours' },
    { case: 'the same in both orders throughout', texts: ['3/3/2024', '5/5/2024'], value: 'dmy', source: 'both orders give the same dates' },
    { case: 'what is no date does not count', texts: ['25/3/2024', 'n/a', '31/31/2024'], value: 'dmy', source: 'such rows are refused by line' },
    { case: 'no date at all', texts: ['x'], value: null, source: 'nothing to find' },
  ])('$case', ({ texts, value }) => {
    expect(find(texts)).toMatchObject({ value, question: null });
  });

  test('says the line that told', () => {
    expect(find(['3/4/2024', '25/3/2024']).text).toBe('25/3/2024 in line 3 is a date in this order only');
  });

  test.each([
    { case: 'every date fits both', texts: ['3/4/2024', '5/6/2024'], options: ['dmy', 'mdy'], code: 'import-ask-order' },
    { case: 'every date of two-digit years fits three', texts: ['03/04/05'], options: ['ymd', 'dmy', 'mdy'], code: 'import-ask-order' },
    { case: 'no order fits all', texts: ['25/3/2024', '3/25/2024', '4/5/2024'], options: ['dmy', 'mdy'], code: 'import-ask-order-mixed' },
  ])('is asked where $case', ({ texts, options, code }) => {
    const found = find(texts);
    expect(found).toMatchObject({ value: null, question: { answer: 'dateOrder', code } });
    expect(found.question?.options.map(({ value }) => value)).toEqual(options);
    expect(found.question?.options.every(({ examples }) => examples.length > 0)).toBe(true);
  });

  test.each([
    { case: 'readings that rise with the dates', texts: ['01/12/2023', '05/06/2023', '06/04/2023'], values: [300, 200, 100], suggested: 'dmy', why: /out of order/, source: 'month first: 12 Jan 300, 6 May 200, 4 Jun 100: falling' },
    { case: 'the way of writing at home', texts: ['3/4/2024'], suggested: 'dmy', why: /lives/, source: 'en-GB' },
    { case: 'the way of writing in the United States', texts: ['3/4/2024'], locale: 'en-US', suggested: 'mdy', why: /lives/, source: 'en-US' },
  ])('$case suggests it, and does not decide', ({ suggested, why, texts, ...more }) => {
    const found = find(texts, more);
    expect(found).toMatchObject({ value: null, question: { suggested } });
    expect(found.question?.why).toMatch(why);
  });

  test('dates ahead of today speak against an order', () => {
    // Month first these are 1, 2 and 3 December 2026, which have not come; day first 12 January, 12 February, 12 March.
    expect(find(['12/01/2026', '12/02/2026', '12/03/2026'], { locale: 'en-US' })).toMatchObject({ value: null, question: { suggested: 'dmy' } });
  });

  test('a choice settles it, and is heard even against the dates', () => {
    expect(find(['3/4/2024'], { chosen: 'mdy' })).toMatchObject({ value: 'mdy', by: 'choice', question: null });
    expect(find(['25/3/2024'], { chosen: 'mdy' })).toMatchObject({ value: 'mdy', question: null });
  });
});
