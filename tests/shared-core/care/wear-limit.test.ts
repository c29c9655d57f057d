import { describe, expect, test } from 'vitest';
import { limitValue, passes, TREAD_LAWS, treadLawsPassed } from '../../../shared-core/care/wear-limit.ts';

describe('the laws on tread', () => {
  // Source: 1.6 mm askthe.police.uk (seen), 2/32 in two state inspection rules (seen), 2/32 in = 1.5875 mm (computed).
  test.each([
    { depth: 1.6, passed: ['tread-1.6-mm', 'tread-2-32-in'] },
    { depth: 1.5999, passed: ['tread-2-32-in'] },
    { depth: 1.59, passed: ['tread-2-32-in'] },
    { depth: 1.5875, passed: ['tread-2-32-in'] },
    { depth: 1.5874, passed: [] },
    { depth: 1.5, passed: [] },
    { depth: 8, passed: ['tread-1.6-mm', 'tread-2-32-in'] },
  ])('$depth mm passes $passed', ({ depth, passed }) => {
    expect(treadLawsPassed(depth)).toEqual(passed);
  });

  test('are named choices whose values are the laws\' own', () => {
    expect([limitValue(TREAD_LAWS['tread-1.6-mm']), limitValue(TREAD_LAWS['tread-2-32-in'])]).toEqual([1.6, 1.5875]);
  });
});

describe('passing a limit', () => {
  test.each([
    { case: 'falling, at it', value: 3, rises: false, passed: true },
    { case: 'falling, below it', value: 2.999999, rises: false, passed: false },
    { case: 'falling, above it', value: 3.1, rises: false, passed: true },
    { case: 'rising, at it', value: 3, rises: true, passed: true },
    { case: 'rising, above it', value: 3.000001, rises: true, passed: false },
    { case: 'rising, below it', value: 2.9, rises: true, passed: true },
  ])('$case', ({ value, rises, passed }) => {
    expect(passes(value, 3, rises)).toBe(passed);
  });
});
