import { describe, expect, test } from 'vitest';
import { directSolver } from '../../electron/solver/highs-instance.ts';
import { violationsOf } from '../../shared-core/integer-program/check-values.ts';
import { draftProgram, type Program } from '../../shared-core/integer-program/program.ts';
import { publishedPrograms } from '../reference/published-programs.ts';
import { hardProgram } from './hard-program.ts';

const solver = directSolver();

describe('published programs', () => {
  test.each(publishedPrograms)('$case', async ({ program, optimum }) => {
    const answer = await solver.solve(program);
    expect(answer).toMatchObject({ status: 'optimal' });
    if (answer.status !== 'optimal') return;
    expect(answer.objective).toBeCloseTo(optimum, 6);
    expect(answer.bound).toBeCloseTo(optimum, 4);
    expect(violationsOf(program, answer.values)).toEqual([]);
  });
});

describe('what a program may say', () => {
  const x = { whole: true, cost: 1, upper: Infinity, lower: 0 };
  const cases: readonly { case: string; program: Program; status: string }[] = [
    { case: 'no variables, no rows', program: { variables: [], rows: [] }, status: 'optimal' },
    { case: 'no variables, a row that cannot hold', program: { variables: [], rows: [{ lower: 1, upper: 2, variables: [], coefficients: [] }] }, status: 'infeasible' },
    { case: 'no rows', program: { variables: [x], rows: [] }, status: 'optimal' },
    { case: 'rows against each other', program: { variables: [x], rows: [row(2, 3), row(4, 5)] }, status: 'infeasible' },
    { case: 'only fractions allowed', program: { variables: [x], rows: [row(0.2, 0.8)] }, status: 'infeasible' },
    { case: 'an empty row that cannot hold', program: { variables: [x], rows: [{ lower: 1, upper: 2, variables: [], coefficients: [] }] }, status: 'infeasible' },
    { case: 'no end to the saving', program: { variables: [{ ...x, cost: -1 }], rows: [] }, status: 'unbounded' },
    { case: 'no end, with fractions', program: { variables: [{ ...x, cost: -1, whole: false }], rows: [row(1, Infinity)] }, status: 'unbounded' },
  ];
  test.each(cases)('$case', async ({ program, status }) => {
    expect((await solver.solve(program)).status).toBe(status);
  });

  test('the gap is zero unless it is given: a saving of one in a thousand million is not passed over', async () => {
    const draft = draftProgram();
    const dear = draft.variable({ ...x, upper: 1, cost: 1_000_000_001 });
    const cheap = draft.variable({ ...x, upper: 1, cost: 1_000_000_000 });
    draft.row(1, [[dear, 1], [cheap, 1]], 1);
    expect(await solver.solve(draft.program())).toMatchObject({ status: 'optimal', values: [0, 1], objective: 1_000_000_000 });
  });

  test.each([NaN, Infinity, 1e15])('a cost of %s is our own bug and throws', async (cost) => {
    await expect(solver.solve({ variables: [{ ...x, cost }], rows: [] })).rejects.toThrow('Bug');
    expect((await solver.solve({ variables: [x], rows: [row(2, 3)] })).status).toBe('optimal');
  });
});

describe('limits', () => {
  test('a node limit stops with the best so far and a bound below it, the same each time', async () => {
    const first = await solver.solve(hardProgram(), { nodeLimit: 30 });
    expect(first).toMatchObject({ status: 'stopped', reason: 'nodes' });
    if (first.status !== 'stopped' || first.best === null) throw new Error('no best');
    expect(violationsOf(hardProgram(), first.best.values)).toEqual([]);
    expect(first.bound).toBeLessThan(first.best.objective);
    expect(await solver.solve(hardProgram(), { nodeLimit: 30 })).toEqual(first);
    expect(await directSolver().solve(hardProgram(), { nodeLimit: 30 })).toEqual(first);
  });

  test('an iteration limit and a time limit stop too, and say so', async () => {
    expect(await solver.solve(hardProgram(), { iterationLimit: 1000 })).toMatchObject({ status: 'stopped', reason: 'iterations' });
    expect(await solver.solve(hardProgram(), { timeLimitSeconds: 0.3 })).toMatchObject({ status: 'stopped', reason: 'time' });
  });

  test('a start is used: stopped at once, the best is no worse than the start', async () => {
    const found = await solver.solve(hardProgram(), { nodeLimit: 60 });
    if (found.status !== 'stopped' || found.best === null) throw new Error('no best');
    const again = await solver.solve(hardProgram(), { nodeLimit: 1, start: found.best.values });
    if (again.status !== 'stopped' || again.best === null) throw new Error('no best');
    expect(again.best.objective).toBeLessThanOrEqual(found.best.objective + 1e-6);
  });
});

function row(lower: number, upper: number) {
  return { lower, upper, variables: [0], coefficients: [1] };
}
