import { describe, expect, test } from 'vitest';
import { costOf, violationsOf } from '../../../shared-core/integer-program/check-values.ts';
import { draftProgram } from '../../../shared-core/integer-program/program.ts';

describe('draftProgram', () => {
  test('numbers variables from 0, adds up terms of one variable and drops what comes to nothing', () => {
    const draft = draftProgram();
    const x = draft.variable({ cost: 2 });
    const y = draft.variable({ whole: true, upper: 4 });
    draft.row(1, [[x, 1], [y, 3], [x, 2], [y, -3]], 9);
    expect(draft.program()).toEqual({
      variables: [
        { lower: 0, upper: Infinity, whole: false, cost: 2 },
        { lower: 0, upper: 4, whole: true, cost: 0 },
      ],
      rows: [{ lower: 1, upper: 9, variables: [0], coefficients: [3] }],
    });
  });

  test('a program taken out does not change when the draft goes on', () => {
    const draft = draftProgram();
    const before = draft.program();
    draft.variable({});
    expect(before.variables).toHaveLength(0);
  });
});

describe('violationsOf', () => {
  const draft = draftProgram();
  const x = draft.variable({ upper: 10, whole: true, cost: 3 });
  const y = draft.variable({ lower: -1, cost: 1 });
  draft.row(2, [[x, 1], [y, 2]], 8);
  const program = draft.program();

  test.each([
    { case: 'allowed values', values: [2, 1.5], kinds: [] },
    { case: 'above a bound', values: [11, -1], kinds: ['bound', 'row'] },
    { case: 'below a bound', values: [5, -1.5], kinds: ['bound'] },
    { case: 'not whole', values: [2.5, 0], kinds: ['whole'] },
    { case: 'a row too small', values: [1, 0], kinds: ['row'] },
    { case: 'a row too large', values: [9, 0], kinds: ['row'] },
    { case: 'a value missing', values: [2], kinds: ['bound', 'row'] },
    { case: 'not a number', values: [NaN, 1], kinds: ['bound', 'whole', 'row'] },
  ])('$case', ({ values, kinds }) => {
    expect(violationsOf(program, values).map((violation) => violation.kind)).toEqual(kinds);
  });

  test('cost is the sum of cost times value', () => {
    expect(costOf(program, [2, 1.5])).toBe(7.5);
  });
});
