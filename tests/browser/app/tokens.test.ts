import { describe, expect, test } from 'vitest';
import { cssVariables, theme } from '../../../renderer/app/theme.ts';
import { contrastOf } from './contrast.ts';
import { pairsInUse, readForced, readThemes } from './read-tokens.ts';

/** Source: WCAG 2.2, contrast of boundary pairs by its definitions (numbers computed from them). */
describe('contrast', () => {
  test.each([
    { one: '#000000', other: '#ffffff', is: 21 },
    { one: '#767676', other: '#ffffff', is: 4.5422 },
    { one: '#777777', other: '#ffffff', is: 4.4781 },
    { one: '#949494', other: '#ffffff', is: 3.0335 },
    { one: '#959595', other: '#ffffff', is: 2.9953 },
    { one: '#ff0000', other: '#ffffff', is: 3.9985 },
    { one: '#ffff00', other: '#ffffff', is: 1.0738 },
  ])('of $one and $other is $is', ({ one, other, is }) => {
    expect(contrastOf(one, other)).toBeCloseTo(is, 4);
    expect(contrastOf(other, one)).toBeCloseTo(is, 4);
  });
});

const SHEETS = ['paper', 'sheet', 'field'];
/** Words, and the grounds on which they stand. */
const WORDS: Readonly<Record<string, readonly string[]>> = {
  ink: [...SHEETS, 'sheet-pressed', 'soon-ground', 'late-ground', 'hatch-ground'],
  'ink-soft': [...SHEETS, 'sheet-pressed', 'soon-ground', 'hatch-ground'],
  late: [...SHEETS, 'late-ground'],
  soon: [...SHEETS, 'soon-ground'],
  later: [...SHEETS, 'sheet-pressed', 'soon-ground'],
  'later-pressed': [...SHEETS, 'sheet-pressed', 'soon-ground'],
  paper: ['ink'],
  sheet: ['ink', 'later', 'today', 'late'],
  'on-later': ['later', 'later-pressed'],
  'rail-ink': ['rail', 'rail-pressed'],
  'rail-current': ['rail', 'rail-pressed'],
};
/** What is drawn, and beside what. */
const SHAPES: Readonly<Record<string, readonly string[]>> = {
  'field-edge': SHEETS,
  focus: [...SHEETS, 'sheet-pressed', 'hatch-ground'],
  late: ['sheet', 'paper', 'hatch-ground'],
  soon: ['sheet', 'paper', 'hatch-ground'],
  later: ['sheet', 'paper', 'hatch-ground'],
  today: ['sheet', 'paper', 'hatch-ground'],
  ink: ['sheet', 'paper', 'hatch-ground'],
  'rail-current': ['rail', 'rail-pressed'],
};
/** Lines that part one thing from the next: ornament, except where tints and shades are gone. */
const LINES: Readonly<Record<string, readonly string[]>> = { rule: SHEETS, 'rule-strong': SHEETS, 'sheet-edge': SHEETS, hatch: SHEETS };

const pairs = (table: Readonly<Record<string, readonly string[]>>) => Object.entries(table).flatMap(([one, others]) => others.map((other) => [one, other] as const));

/** Sources: WCAG 2.2, 1.4.3 (words 4.5), 1.4.6 (words 7) and 1.4.11 (shapes 3), seen; shapes of 4.5 are our own rule. */
describe.each(Object.entries(readThemes()))('the tokens of %s', (name, tokens) => {
  const more = name.startsWith('contrast');
  const colour = (token: string) => tokens[token] ?? `no token --${token}`;

  test.each(pairs(WORDS))('words: --%s on --%s', (one, other) => expect(contrastOf(colour(one), colour(other))).toBeGreaterThanOrEqual(more ? 7 : 4.5));
  test.each(pairs(SHAPES))('shapes: --%s beside --%s', (one, other) => expect(contrastOf(colour(one), colour(other))).toBeGreaterThanOrEqual(more ? 4.5 : 3));
  if (more) test.each(pairs(LINES))('lines: --%s beside --%s', (one, other) => expect(contrastOf(colour(one), colour(other))).toBeGreaterThanOrEqual(4.5));
});

describe('the themes', () => {
  test('have the same tokens, each of them', () => {
    const { light = {}, ...others } = readThemes();
    const colours = (tokens: Readonly<Record<string, string>>) => Object.keys(tokens).filter((name) => !name.startsWith('shade')).sort();
    for (const [name, tokens] of Object.entries(others)) expect(colours(tokens), name).toEqual(colours(light));
    expect(Object.keys(readForced())).toEqual(expect.arrayContaining(Object.keys(light)));
  });

  test('where words of one token stand on another, the pair is looked at above', () => {
    const used = pairsInUse();
    expect(used.length).toBeGreaterThan(10);
    expect(used.filter(({ words, ground }) => WORDS[words]?.includes(ground) !== true)).toEqual([]);
  });

  test('hand the library tokens of ours alone', () => {
    const { light, dark } = cssVariables(theme as never);
    const known = Object.keys(readThemes()['light'] ?? {});
    for (const value of Object.values({ ...light, ...dark })) expect(known).toContain(/^var\(--([a-z-]+)\)$/.exec(value)?.[1]);
  });

  /** Words in a row of choices, which the library draws from its own scale. */
  test.each([['gray', 7, 1], ['gray', 9, 1], ['dark', 1, 8], ['dark', 0, 5]] as const)('a choice in %s %s on %s', (scale, words, ground) => {
    const shades = theme.colors?.[scale] ?? [];
    expect(contrastOf(shades[words] ?? '', shades[ground] ?? '')).toBeGreaterThanOrEqual(4.5);
  });
});
