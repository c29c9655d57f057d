/** One unknown of a program: its bounds (may be infinite), whether it must be whole, and what each unit of it costs. */
export interface Variable {
  readonly lower: number;
  readonly upper: number;
  readonly whole: boolean;
  readonly cost: number;
}

/** One condition: `lower <= sum of coefficients[i] * variables[i] <= upper`. Each variable is named at most once in a row. */
export interface Row {
  readonly lower: number;
  readonly upper: number;
  readonly variables: readonly number[];
  readonly coefficients: readonly number[];
}

/** Make the sum of `cost * value` as small as possible, within the bounds and the rows. Plain data: it can be sent to a worker. */
export interface Program {
  readonly variables: readonly Variable[];
  readonly rows: readonly Row[];
}

/** One term of a row: how much of which variable. */
export type Term = readonly [variable: number, coefficient: number];

/** A program being written: variables are known by the number that `variable` hands out. */
export interface ProgramDraft {
  /** Adds an unknown and hands out its number, counted from 0. */
  variable(of: Partial<Variable>): number;
  /** Adds `lower <= terms <= upper`; terms of the same variable are added up and zero terms dropped. */
  row(lower: number, terms: readonly Term[], upper: number): void;
  /** The program so far. */
  program(): Program;
}

/** A variable that says nothing of itself: 0 or more, any fraction, free of cost. */
const PLAIN: Variable = { lower: 0, upper: Infinity, whole: false, cost: 0 };

/**
 * Starts an empty program.
 *
 * @example
 * const draft = draftProgram();
 * const x = draft.variable({ whole: true, cost: 3 });
 * draft.row(2.5, [[x, 1]], Infinity); // the cheapest whole x of at least 2.5 is 3
 */
export function draftProgram(): ProgramDraft {
  const variables: Variable[] = [];
  const rows: Row[] = [];
  return {
    variable: (of) => variables.push({ ...PLAIN, ...of }) - 1,
    row: (lower, terms, upper) => {
      rows.push(rowOf(lower, terms, upper));
    },
    program: () => ({ variables: [...variables], rows: [...rows] }),
  };
}

function rowOf(lower: number, terms: readonly Term[], upper: number): Row {
  const sums = new Map<number, number>();
  for (const [variable, coefficient] of terms) sums.set(variable, (sums.get(variable) ?? 0) + coefficient);
  const kept = [...sums].filter(([, coefficient]) => coefficient !== 0);
  return { lower, upper, variables: kept.map(([variable]) => variable), coefficients: kept.map(([, coefficient]) => coefficient) };
}
