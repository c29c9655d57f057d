import { describe, expect, test } from 'vitest';
import { memoryHousehold, unstartedHousehold } from '../contract/memory-household.ts';

describe('starting a household', () => {
  test('nothing need be said', () => {
    expect(unstartedHousehold().must('household.start', {}).household).toEqual({ id: 'household', name: 'Our household', currency: 'GBP', unit: 'km', hemisphere: 'north', locale: 'en-GB', sample: false });
  });

  test.each([
    { case: 'a currency without minor units', request: { currency: 'XAU' }, code: 'unknown-currency' },
    { case: 'a currency that is a word of the language', request: { currency: 'constructor' }, code: 'unknown-currency' },
    { case: 'a currency in small letters', request: { currency: 'gbp' }, code: 'unknown-currency' },
    { case: 'a third unit', request: { unit: 'm' }, code: 'unknown-unit' },
    { case: 'no name', request: { name: ' ' }, code: 'text-empty' },
    { case: 'a half of the world that there is not', request: { hemisphere: 'east' }, code: 'not-understood' },
    { case: 'a locale that is none', request: { locale: 'English' }, code: 'not-understood' },
  ])('$case is refused: $code', ({ request, code }) => {
    const household = unstartedHousehold();
    expect(household.call('household.start', request as never)).toMatchObject({ ok: false, refusal: { code } });
    expect(household.entries).toHaveLength(0);
  });

  test('is done once', () => {
    expect(memoryHousehold().call('household.start', {})).toMatchObject({ ok: false, refusal: { code: 'household-started' } });
  });
});

describe('changing a household', () => {
  test('touches only the fields given', () => {
    const household = memoryHousehold({ currency: 'JPY', unit: 'mi' });
    expect(household.must('household.change', { hemisphere: 'south' }).household).toMatchObject({ currency: 'JPY', unit: 'mi', hemisphere: 'south' });
  });

  test.each([
    { case: 'its currency, for amounts are written in it', request: { currency: 'EUR' } },
    { case: 'what marks a sample', request: { sample: true } },
  ])('never $case', ({ request }) => {
    const household = memoryHousehold({ currency: 'JPY' });
    const reply = household.call('household.change', request as never);
    expect(reply.ok ? [reply.value.household.currency, reply.value.household.sample] : ['JPY', false]).toEqual(['JPY', false]);
  });

  test('there must be one', () => {
    expect(unstartedHousehold().call('household.change', { name: 'Ours' })).toMatchObject({ ok: false, refusal: { code: 'household-not-started' } });
  });
});
