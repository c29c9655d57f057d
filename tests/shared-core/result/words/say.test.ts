import { describe, expect, test } from 'vitest';
import { EN } from '../../../../shared-core/result/words/en.ts';
import { formsOf } from '../../../../shared-core/result/words/phrase.ts';
import { hasWords, say, sayDate, sayNumber, sayRefusal } from '../../../../shared-core/result/words/say.ts';

describe('a sentence', () => {
  test.each([
    { case: 'with a date', key: 'reason-printed-date', values: { date: '2026-12-26' }, said: 'The date printed on it is 26 Dec 2026.' },
    { case: 'with a number and a unit', key: 'reason-distance-certificate', values: { target: 38_250, unit: 'mi' }, said: 'Distance comes first, until 38\u202f250 mi.' },
    { case: 'with a name that looks like a replacement', key: 'unknown-car', values: { car: '$& {car}' }, said: 'There is no car $& {car} here. Check its name.' },
    { case: 'with a value that is not there', key: 'unknown-car', values: {}, said: 'There is no car  here. Check its name.' },
  ])('$case', ({ key, values, said }) => {
    expect(say({ key, values })).toBe(said);
    expect(sayRefusal({ code: key, values })).toBe(said);
  });

  test.each(['no-such-key', 'constructor', 'toString', '__proto__'])('%s has no words: our own bug', (key) => {
    expect(hasWords(key)).toBe(false);
    expect(() => say({ key, values: {} })).toThrow(/no words/);
  });
});

test('no sentence begins with the path of a field, which is no beginning of a sentence', () => {
  expect(Object.entries(EN).filter(([, phrase]) => formsOf(phrase).some((form) => form.startsWith('{field}'))).map(([key]) => key)).toEqual([]);
});

describe('numbers and dates', () => {
  test.each([
    { value: 0, said: '0' }, { value: 9999, said: '9999' }, { value: 10_000, said: '10\u202f000' }, { value: 1_234_567, said: '1\u202f234\u202f567' }, { value: 123_456, said: '123\u202f456' },
    { value: -9999, said: '-9999' }, { value: -123_456, said: '-123\u202f456' }, { value: 12_345.5678, said: '12345.5678' },
  ])('$value', ({ value, said }) => {
    expect(sayNumber(value)).toBe(said);
  });

  test.each([{ date: '2026-01-05', said: '5 Jan 2026' }, { date: '2026-12-31', said: '31 Dec 2026' }])('$date', ({ date, said }) => {
    expect(sayDate(date)).toBe(said);
  });
});
