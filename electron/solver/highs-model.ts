import type { ModelData } from 'highs';
import type { Program } from '../../shared-core/integer-program/program.ts';

/** The largest number the solver is given for a cost, a coefficient or a finite bound; beyond it its arithmetic means nothing. */
const LARGEST = 1e14;

/**
 * A program in the arrays that HiGHS takes: rows one after another, numbers as they are (no text is written, so none is rounded).
 *
 * @throws where a number is not finite, too large, or a row names a variable that is not there: our own bug.
 */
export function highsModel(program: Program): ModelData {
  const { variables, rows } = program;
  const starts = new Int32Array(rows.length + 1);
  rows.forEach((row, at) => (starts[at + 1] = (starts[at] ?? 0) + row.variables.length));
  const indices = Int32Array.from(rows.flatMap((row) => row.variables));
  const values = Float64Array.from(rows.flatMap((row) => row.coefficients));
  if (indices.length !== values.length || indices.some((at) => at < 0 || at >= variables.length)) throw new Error('Bug: a row names no variable');
  return {
    numCols: variables.length,
    numRows: rows.length,
    colCost: numbers(variables.map((variable) => variable.cost), false),
    colLower: numbers(variables.map((variable) => variable.lower), true),
    colUpper: numbers(variables.map((variable) => variable.upper), true),
    rowLower: numbers(rows.map((row) => row.lower), true),
    rowUpper: numbers(rows.map((row) => row.upper), true),
    matrix: { format: 'csr', numRows: rows.length, numCols: variables.length, starts, indices, values: numbers(values, false) },
    integrality: Int32Array.from(variables, (variable) => (variable.whole ? 1 : 0)),
  };
}

function numbers(of: ArrayLike<number>, mayBeInfinite: boolean): Float64Array {
  const taken = Float64Array.from(of);
  const bad = taken.find((n) => Number.isNaN(n) || (Number.isFinite(n) ? Math.abs(n) > LARGEST : !mayBeInfinite));
  if (bad !== undefined) throw new Error(`Bug: the solver cannot take the number ${bad}`);
  return taken;
}
