import type { Program } from './program.ts';

/** A bound, a row or a wholeness that values break, and by how much. */
export interface Violation {
  readonly kind: 'bound' | 'row' | 'whole';
  /** The number of the variable or of the row. */
  readonly at: number;
  readonly by: number;
}

/**
 * What is wrong with values for a program; empty where they are allowed. It does not trust a solver's own numbers.
 *
 * @param slack how far off is forgiven, relative to the size of the row's terms (1 at least)
 * @example violationsOf(program, [3]) //=> []
 */
export function violationsOf(program: Program, values: readonly number[], slack = 1e-6): readonly Violation[] {
  const found: Violation[] = [];
  const note = (kind: Violation['kind'], at: number, by: number, allowed: number) => {
    if (!(by <= allowed)) found.push({ kind, at, by });
  };
  program.variables.forEach((variable, at) => {
    const value = values[at] ?? NaN;
    note('bound', at, outside(value, variable.lower, variable.upper), slack);
    if (variable.whole) note('whole', at, Math.abs(value - Math.round(value)), slack);
  });
  program.rows.forEach((row, at) => {
    const terms = row.variables.map((variable, i) => (values[variable] ?? NaN) * (row.coefficients[i] ?? NaN));
    const size = terms.reduce((largest, term) => Math.max(largest, Math.abs(term)), 1);
    note('row', at, outside(sum(terms), row.lower, row.upper), slack * size);
  });
  return found;
}

/** What values cost under a program. @example costOf(program, [3]) //=> 9 */
export function costOf(program: Program, values: readonly number[]): number {
  return sum(program.variables.map((variable, at) => variable.cost * (values[at] ?? NaN)));
}

/** How far a value lies outside its bounds; NaN stays NaN, and is so never allowed. */
function outside(value: number, lower: number, upper: number): number {
  return Math.max(lower - value, value - upper, 0);
}

function sum(terms: readonly number[]): number {
  return terms.reduce((total, term) => total + term, 0);
}
