import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { idSchema, sha256Schema } from '../../../shared-core/result/id.ts';
import { parseRequest } from '../../../shared-core/result/parse-request.ts';
import { longText, plainText } from '../../../shared-core/result/plain-text.ts';
import { refusedBy } from '../../../shared-core/result/refused-by.ts';

const schema = z.strictObject({ name: plainText(5), list: z.array(z.strictObject({ n: z.int(refusedBy('not-months')) })).default([]), either: z.union([z.strictObject({ b: plainText(3) }), z.strictObject({ a: z.strictObject({ x: z.number(refusedBy('not-a-quantity')) }) })]).optional() });

describe('a request', () => {
  test('is taken with its defaults, and its text trimmed', () => {
    expect(parseRequest(schema, { name: ' Pip ' })).toEqual({ ok: true, value: { name: 'Pip', list: [] } });
  });

  test.each([
    { case: 'our own code, with the field', request: { name: '' }, code: 'text-empty', path: ['name'], values: { field: 'name' } },
    { case: 'deep inside', request: { name: 'Pip', list: [{ n: 1 }, { n: 1.5 }] }, code: 'not-months', path: ['list', 1, 'n'], values: { field: 'list.1.n' } },
    { case: 'a field that is not known', request: { name: 'Pip', nam: 1 }, code: 'unknown-field', path: [], values: { field: 'nam' } },
    { case: 'a field that is not known, deep inside', request: { name: 'Pip', list: [{ n: 1, m: 2 }] }, code: 'unknown-field', path: ['list', 0], values: { field: 'list.0.m' } },
    { case: 'of two ways, the one that fits but for a check', request: { name: 'Pip', either: { b: 'long' } }, code: 'text-too-long', path: ['either', 'b'], values: { field: 'either.b' } },
    { case: 'of two ways, what reaches deepest', request: { name: 'Pip', either: { a: { x: 'one' } } }, code: 'not-a-quantity', path: ['either', 'a', 'x'], values: { field: 'either.a.x' } },
  ])('$case', ({ request, code, path, values }) => {
    expect(parseRequest(schema, request)).toEqual({ ok: false, refusal: { code, values, path } });
  });

  test.each([null, undefined, 5, 'text', []])('%j is no request at all', (request) => {
    expect(parseRequest(schema, request)).toMatchObject({ ok: false, refusal: { code: 'not-understood', values: { field: 'the request' }, path: [] } });
  });
});

/** What no check of ours has a code for is still said in our own words. */
describe('why a request is not understood', () => {
  const wide = z.strictObject({
    number: z.number().gt(0).max(12).multipleOf(0.5), month: z.int().min(1), word: z.string().min(1).max(4), yes: z.boolean(), list: z.array(z.int()).min(1).max(2),
    unit: z.enum(['km', 'mi']), day: z.string().regex(/^x/), only: z.literal('whole'), inside: z.strictObject({}),
  }).partial().extend({ needed: z.number() });

  test.each([
    { case: 'text for a number', request: { number: '5' }, why: 'it must be a number' },
    { case: 'no number at all', request: { number: Number.NaN }, why: 'it must be a number' },
    { case: 'null', request: { number: null }, why: 'it must be a number' },
    { case: 'too much', request: { number: 13 }, why: 'it must be at most 12' },
    { case: 'not enough', request: { number: 0 }, why: 'it must be more than 0' },
    { case: 'between the steps', request: { number: 0.7 }, why: 'it must be a multiple of 0.5' },
    { case: 'part of a whole', request: { month: 1.5 }, why: 'it must be a whole number' },
    { case: 'below the first', request: { month: 0 }, why: 'it must be at least 1' },
    { case: 'a number for text', request: { word: 5 }, why: 'it must be text' },
    { case: 'empty text', request: { word: '' }, why: 'it must not be empty' },
    { case: 'long text', request: { word: 'words' }, why: 'it must have at most 4 characters' },
    { case: 'neither yes nor no', request: { yes: 'yes' }, why: 'it must be true or false' },
    { case: 'no list', request: { list: 1 }, why: 'it must be a list' },
    { case: 'an empty list', request: { list: [] }, why: 'it must not be empty' },
    { case: 'a long list', request: { list: [1, 2, 3] }, why: 'it must hold at most 2' },
    { case: 'another word', request: { unit: 'mm' }, why: 'it must be km or mi' },
    { case: 'not the one word', request: { only: 'half' }, why: 'it must be whole' },
    { case: 'not the pattern', request: { day: 'y' }, why: 'it is not written as it must be' },
    { case: 'no fields', request: { inside: [] }, why: 'it must be an object with named fields' },
    { case: 'missing', request: { needed: undefined }, why: 'it is missing' },
  ])('$case: $why', ({ request, why }) => {
    expect(parseRequest(wide, { needed: 1, ...request })).toMatchObject({ ok: false, refusal: { code: 'not-understood', values: { why } } });
  });
});

describe('text as typed', () => {
  test.each([
    { case: 'marks put together', text: 'Zoe\u0308', taken: 'Zoë' },
    { case: 'blanks around', text: '  a b ', taken: 'a b' },
    { case: 'only blanks', text: ' \t ', taken: null },
    { case: 'a tab inside', text: 'a\tb', taken: null },
    { case: 'a line end inside', text: 'a\nb', taken: null },
    { case: 'NUL', text: 'a\u0000b', taken: null },
    { case: 'a C1 control', text: 'a\u0085b', taken: null },
    { case: 'turned round', text: 'a\u202eb', taken: null },
    { case: 'half a character', text: 'a\udc00b', taken: null },
    { case: 'a whole one', text: 'a🔧b', taken: 'a🔧b' },
    { case: 'ten places', text: 'x'.repeat(10), taken: 'x'.repeat(10) },
    { case: 'eleven places', text: 'x'.repeat(11), taken: null },
  ])('one line: $case', ({ text, taken }) => {
    const parsed = plainText(10).safeParse(text);
    expect(parsed.success ? parsed.data : null).toBe(taken);
  });

  test('several lines may be empty and hold line ends and tabs, but no other controls', () => {
    const parse = (text: string) => longText(20).safeParse(text);
    expect(['', 'two\nlines', 'a\tb'].map((text) => parse(text).success)).toEqual([true, true, true]);
    expect(['a\u0007', 'a\ufeffb', 'x'.repeat(21)].map((text) => parse(text).success)).toEqual([false, false, false]);
  });
});

describe('ids', () => {
  test.each([
    { id: 'pip', taken: true }, { id: '0-a', taken: true }, { id: 'x'.repeat(64), taken: true }, { id: 'x'.repeat(65), taken: false }, { id: '', taken: false }, { id: '-a', taken: false },
    { id: 'Pip', taken: false }, { id: '../a', taken: false }, { id: 'a b', taken: false }, { id: 'a\n', taken: false }, { id: 'ä', taken: false },
  ])('$id: $taken', ({ id, taken }) => {
    expect(idSchema.safeParse(id).success).toBe(taken);
  });

  test.each([
    { id: 'a'.repeat(64), taken: true }, { id: 'A'.repeat(64), taken: false }, { id: 'a'.repeat(63), taken: false }, { id: `${'a'.repeat(63)}g`, taken: false },
  ])('digest $id: $taken', ({ id, taken }) => {
    expect(sha256Schema.safeParse(id).success).toBe(taken);
  });
});
