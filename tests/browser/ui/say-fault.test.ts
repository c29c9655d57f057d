import { globSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { REFUSAL_WORDS } from '../../../shared-core/result/words/en-refusals.ts';
import { sayFault } from '../../../renderer/ui/form/say-fault.ts';
import { isWordKey, tell } from '../../../renderer/ui/words/tell.ts';

/** Source for all: our own words. */
describe('a refusal at a field', () => {
  test.each([
    { case: 'names no field of the request', refusal: { code: 'text-empty', values: { field: 'costs.0.text' } }, says: 'This is empty. Write something.' },
    { case: 'else has the sentence of the core', refusal: { code: 'car-name-taken', values: { name: 'Pip' } }, says: 'Another car is already called Pip. Choose another name.' },
    { case: 'without a sentence says its code', refusal: { code: 'quite-new', values: {} }, says: 'It was refused (quite-new). Look at what you typed and try again.' },
    { case: 'of an amount shows how one is written', refusal: { code: 'not-an-amount', values: { currency: 'GBP', example: '1250.00' } }, says: 'Write an amount of GBP, such as 1250.00.' },
  ])('$case', ({ refusal, says }) => expect(sayFault(refusal)).toBe(says));

  test('of the core never shows the name of a field of the request', () => {
    const shown = Object.keys(REFUSAL_WORDS).map((code) => sayFault({ code, values: { field: 'THE-FIELD' } }));
    expect(shown.filter((sentence) => sentence.includes('THE-FIELD'))).toEqual([]);
  });
});

describe('the words of the screens', () => {
  const sources = globSync('renderer/**/*.{ts,tsx}', { cwd: new URL('../../../', import.meta.url) }).map((file) => readFileSync(new URL(`../../../${file}`, import.meta.url), 'utf8'));
  const keysOf = (text: string) => [...text.matchAll(/^ {2}'([a-z0-9.-]+)':/gm)].map((match) => match[1] ?? '');
  const keys = sources.flatMap((text) => (/export const [A-Z_]+_WORDS = \{/.test(text) ? keysOf(text) : []));

  test('are said nowhere twice under one key', () => expect(keys.filter((key, at) => keys.indexOf(key) !== at)).toEqual([]));

  test('are all used', () => {
    const code = sources.filter((text) => !/export const [A-Z_]+_WORDS = \{/.test(text)).join('\n');
    // A key is written out, or made of a beginning that is: `state.${...}`, choices('power.', ...).
    const used = (key: string) => code.includes(`'${key}'`) || code.includes(`"${key}"`) || [...key.matchAll(/[.-]/g)].some(({ index }) => code.includes(`\`${key.slice(0, index + 1)}\${`) || code.includes(`'${key.slice(0, index + 1)}'`));
    expect(keys.filter((key) => !used(key) && !key.startsWith('fault.'))).toEqual([]);
  });

  test('choose one or more by n', () => {
    expect([tell('late.days', { n: 1 }), tell('late.days', { n: 2 })]).toEqual(['1 day late', '2 days late']);
    expect(isWordKey('no.such.key')).toBe(false);
  });
});
