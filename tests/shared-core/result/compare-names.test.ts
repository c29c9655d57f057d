import { expect, test } from 'vitest';
import { compareNames } from '../../../shared-core/result/compare-names.ts';

test('names stand in the order a person reads: case is no matter, numbers go by their size', () => {
  expect(['Wheel 10', 'éclair', 'wheel 2', 'Zebra', 'apple', 'Wheel 1'].sort(compareNames)).toEqual(['apple', 'éclair', 'Wheel 1', 'wheel 2', 'Wheel 10', 'Zebra']);
});
