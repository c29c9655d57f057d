import { describe, expect, test } from 'vitest';
import { obligationKindSchema } from '../../../../shared-core/care/obligation.ts';
import type { CountedFrom } from '../../../../shared-core/care/limit-target.ts';
import type { DueState, Limb } from '../../../../shared-core/care/due-window.ts';
import type { ReadingDoubt } from '../../../../shared-core/fleet/reading-judgement.ts';
import { EN } from '../../../../shared-core/result/words/en.ts';
import { formsOf } from '../../../../shared-core/result/words/phrase.ts';
import { hasWords } from '../../../../shared-core/result/words/say.ts';
import { specifications } from '../../../../shared-core/parts/specification.ts';
import { suppliers } from '../../../../shared-core/parts/supplier.ts';
import { parts } from '../../../../shared-core/parts/part.ts';
import { keyBeginningsInSources, messagesInSources, refusalsInSources, saidWhileLoading, type SaidInSource } from './said-in-sources.ts';

const formsBy = (key: string) => formsOf(EN[key] ?? '');
const placesOf = (key: string) => [...formsBy(key).join(' ').matchAll(/\{(\w+)\}/g)].map((match) => match[1] ?? '');
const wordless = (all: readonly SaidInSource[]) => all.filter((one) => !hasWords(one.key)).map((one) => `${one.at} ${one.key}`);
/** Places of a sentence that nobody fills where it is said. */
const unfilled = (all: readonly SaidInSource[]) =>
  all.flatMap(({ key, given, at }) => (given === null ? [] : placesOf(key).filter((place) => !given.includes(place)).map((place) => `${at} ${key}: {${place}}`)));

describe('what is refused', () => {
  const refusals = refusalsInSources();

  test('is found in the sources, in all the ways it is written', () => {
    const keys = refusals.map((one) => one.key);
    // A call, a schema, a table of codes, a choice and an object.
    for (const key of ['unknown-car', 'text-empty', 'store-locked', 'pack-not-found', 'not-sound']) expect(keys).toContain(key);
    expect(new Set(keys).size).toBeGreaterThan(100);
  });

  test('has a sentence', () => {
    expect(wordless(refusals)).toEqual([]);
  });

  test('fills every place of its sentence', () => {
    expect(unfilled(refusals)).toEqual([]);
  });

  test('also where the code is put together', () => {
    expect([specifications, parts, suppliers].map((family) => hasWords(`unknown-${family.name}`))).toEqual([true, true, true]);
  });
});

describe('what is said', () => {
  const messages = messagesInSources();

  test('has words', () => {
    expect(messages.length).toBeGreaterThan(20);
    expect(wordless(messages)).toEqual([]);
  });

  test('fills every place of its words', () => {
    expect(unfilled(messages)).toEqual([]);
  });

  test('also where the key is put together: there are words that begin so', () => {
    const beginnings = keyBeginningsInSources();
    expect(beginnings).toEqual(expect.arrayContaining(['obligation-', 'reason-time-']));
    expect(beginnings.filter((beginning) => !Object.keys(EN).some((key) => key.startsWith(beginning)))).toEqual([]);
  });

  // Each list is held to its union by the compiler: a case forgotten here does not type-check.
  const states: Record<DueState, true> = { late: true, 'probably-due': true, open: true, ahead: true, unknown: true };
  const limbs: Record<Limb, true> = { time: true, distance: true, wear: true, 'printed-date': true };
  const doubts: Record<ReadingDoubt, true> = { decrease: true, 'too-high': true, 'same-day': true, 'above-later': true, 'later-too-high': true };
  const from: Record<CountedFrom, true> = { completion: true, 'first-registration': true, purchase: true, 'first-date': true, certificate: true };
  test.each([
    { beginning: 'state-', ends: Object.keys(states) }, { beginning: 'limb-', ends: Object.keys(limbs) }, { beginning: 'doubt-', ends: Object.keys(doubts) },
    { beginning: 'reason-time-', ends: Object.keys(from) }, { beginning: 'reason-distance-', ends: Object.keys(from) }, { beginning: 'obligation-', ends: obligationKindSchema.options },
  ])('$beginning$ends', ({ beginning, ends }) => {
    expect(ends.filter((end) => !hasWords(beginning + end))).toEqual([]);
  });
});

describe('the sentences', () => {
  test('are whole: no place is left open or misspelt, no blank stands at an end', () => {
    const odd = Object.entries(EN).flatMap(([key, phrase]) => formsOf(phrase).map((text) => [key, text] as const)).filter(([, text]) => text !== text.trim() || / {2}/.test(text) || /\{\W|\w\}\w*\{|\{\}/.test(text) || text.split('{').length !== text.split('}').length);
    expect(odd).toEqual([]);
  });

  test('of refusals end as sentences do', () => {
    const keys = new Set(refusalsInSources().map((one) => one.key));
    expect([...keys].filter((key) => formsBy(key).some((form) => !/[.?}]$/.test(form || '.')))).toEqual([]);
  });
});

test('nothing is said while a file is loaded: it would stay in the locale of that moment', () => {
  expect(saidWhileLoading()).toEqual([]);
});
