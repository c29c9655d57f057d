import { afterEach, describe, expect, test } from 'vitest';
import { SCREEN_WORDS, tell } from '../../../../renderer/ui/words/tell.ts';
import { EN } from '../../../../shared-core/result/words/en.ts';
import { madeUp } from '../../../../shared-core/result/words/made-up.ts';
import { formFor, formsOf } from '../../../../shared-core/result/words/phrase.ts';
import { phrasesOf } from '../../../../shared-core/result/words/phrases-of.ts';
import { say, sayDate, sayMoment, sayMonth } from '../../../../shared-core/result/words/say.ts';
import { speakAs, spokenLocale } from '../../../../shared-core/result/words/speaking.ts';
import { partsWriter } from '../../../../shared-core/result/words/write-date.ts';

afterEach(() => speakAs(null));

describe('a process speaks in one locale', () => {
  test('British until another is chosen, and again when none is', () => {
    const said = () => [spokenLocale(), sayDate('2026-11-25'), say({ key: 'waste-tyre', values: {} }), tell('settings.scheme')];
    const british = said();
    expect(british).toEqual(['en-GB', '25 Nov 2026', 'Old tyres', 'Colours']);
    speakAs('en-US');
    expect(said()).toEqual(['en-US', 'Nov 25, 2026', 'Old tires', 'Colors']);
    speakAs(null);
    expect(said()).toEqual(british);
  });

  test.each([
    { locale: 'en-GB', september: '5 Sep 2026', none: '30 Feb 2026', moment: '25 Nov 2026, 23:30 UTC', month: 'November 2026' },
    { locale: 'en-US', september: 'Sep 5, 2026', none: 'Feb 30, 2026', moment: 'Nov 25, 2026, 23:30 UTC', month: 'November 2026' },
    { locale: 'en-AU', september: '5 Sep 2026', none: '30 Feb 2026', moment: '25 Nov 2026, 23:30 UTC', month: 'November 2026' },
    { locale: 'en-XA', september: '2026/09/05', none: '2026/02/30', moment: '2026/11/25, 23:30 UTC', month: '2026/11' },
  ])('dates in $locale', ({ locale, september, none, moment, month }) => {
    speakAs(locale);
    // The day there is not is what a refusal names: it must not be told as another day.
    expect([sayDate('2026-09-05'), sayDate('2026-02-30'), sayMoment('2026-11-25T23:30:12.000Z'), sayMonth('2026-11-25')]).toEqual([september, none, moment, month]);
  });

  test('every day of a year as Intl itself has it', () => {
    for (const locale of ['en-US', 'en-CA', 'en-ZA']) {
      const [ours, intl] = [[] as string[], [] as string[]];
      const format = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' });
      speakAs(locale);
      for (let at = Date.UTC(2026, 0, 1); at < Date.UTC(2027, 0, 1); at += 86_400_000) {
        ours.push(sayDate(new Date(at).toISOString().slice(0, 10)));
        intl.push(format.format(at).replace('Sept', 'Sep'));
      }
      expect(ours).toEqual(intl);
    }
  });

  test('what is no date stays as it is', () => {
    expect(['2026-13-05', 'soon', ''].map(sayDate)).toEqual(['2026-13-05', 'soon', '']);
  });
});

describe('what is counted', () => {
  test.each([{ n: 1, said: '{n} day' }, { n: 0, said: '{n} days' }, { n: 2, said: '{n} days' }, { n: 1.5, said: '{n} days' }, { n: 21, said: '{n} days' }])('$n', ({ n, said }) => {
    expect(formFor({ one: '{n} day', other: '{n} days' }, n)).toBe(said);
  });
});

describe('the made-up locale', () => {
  test('accents letters, keeps places and stands in brackets', () => {
    expect(madeUp('Work on {date}, 5 mi')).toBe('⟦ŴŴôôŕķ ôôñ {date}, 5 ṁṁî⟧');
    expect(madeUp('')).toBe('');
  });

  test('leaves no plain letter, and is 40 % longer over all that is said', () => {
    const lists = [EN, SCREEN_WORDS].map((list) => [Object.values(list), Object.values(phrasesOf(list)('en-XA'))].map((phrases) => phrases.flatMap(formsOf).map((text) => text.replace(/\{\w+\}/g, ''))));
    for (const [plain = [], made = []] of lists) {
      expect(made.filter((text) => /[A-Za-z]/.test(text))).toEqual([]);
      const letters = (all: readonly string[]) => all.join('').replace(/[^\p{L}]/gu, '').length;
      expect(letters(made) / letters(plain)).toBeGreaterThan(1.38);
    }
  });

  test('has its year first and names a month or a weekday in its own letters', () => {
    const written = (parts: Parameters<typeof partsWriter>[1]) => partsWriter('en-XA', parts)('2026-11-25');
    expect([written({ day: 'numeric', month: 'short' }), written({ month: 'short' }), written({ weekday: 'short' })]).toEqual(['11/25', '⟦ÑÑôṽ⟧', '⟦ŴŴéð⟧']);
    expect(written({ weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' })).toMatch(/^2026\/11\/25 ⟦/);
  });
});
