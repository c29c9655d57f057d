import { describe, expect, test } from 'vitest';
import { assert, assertNever, must } from '../../../shared-core/result/assert.ts';
import { codeIn, refusedBy } from '../../../shared-core/result/refused-by.ts';
import { ok, refuse } from '../../../shared-core/result/result.ts';

describe('results', () => {
  test('are plain objects that survive a structured clone', () => {
    for (const result of [ok({ a: 1 }), refuse('unknown-car', { car: 'x' }, ['car', 0]), refuse('household-started')]) expect(structuredClone(result)).toEqual(result);
  });

  test('name a path only where there is one', () => {
    expect(refuse('household-started')).toEqual({ ok: false, refusal: { code: 'household-started', values: {} } });
    expect(refuse('not-months', {}, ['months'])).toEqual({ ok: false, refusal: { code: 'not-months', values: {}, path: ['months'] } });
  });

  test('a schema\'s code is told from the library\'s own sentence', () => {
    expect([codeIn(refusedBy('text-empty').error), codeIn('Invalid input')]).toEqual(['text-empty', null]);
  });
});

describe('our own bugs stop the program', () => {
  test('a broken assertion, a missing value, a forgotten case', () => {
    expect(() => assert(false, 'it holds')).toThrow('Bug: it holds');
    expect(() => must(undefined, 'car')).toThrow('Bug: no car');
    expect(() => must(null, 'car')).toThrow('Bug: no car');
    expect(() => assertNever('x' as never)).toThrow(/forgotten for "x"/);
  });

  test('nothing stops what is as it should be', () => {
    assert(true, 'it holds');
    expect([must(0, 'zero'), must('', 'text'), must(false, 'answer')]).toEqual([0, '', false]);
  });
});
