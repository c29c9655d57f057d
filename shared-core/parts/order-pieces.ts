import { costOf, violationsOf } from '../integer-program/check-values.ts';
import { draftProgram, type Program, type Row } from '../integer-program/program.ts';
import type { ProgramAnswer, SolveOptions, Solver } from '../integer-program/solver.ts';

/** What the pieces of a program tell of the whole: each costs at least so much, and together their best are a start. */
interface PiecesAnswer {
  readonly leasts: readonly { readonly variables: readonly number[]; readonly cost: number }[];
  /** Values for the whole program; null where some piece found none. */
  readonly start: readonly number[] | null;
}

/**
 * Solves a program whose costs are whole numbers: first without the variables that link its pieces (choices that cost something or nothing
 * and only allow what the rest does), each piece by itself; then whole, from the best of the pieces, knowing the least each piece costs.
 * The pieces alone settle it where their best, put together, costs no more than they do.
 */
export async function solveInPieces(program: Program, links: ReadonlySet<number>, solver: Solver, options: SolveOptions): Promise<ProgramAnswer> {
  const pieces = piecesOf(program, links);
  if (pieces.length < 2) return solver.solve(program, options);
  const found = await solvePieces(program, links, pieces, solver, options);
  if (found === null) return { status: 'infeasible' };
  const { leasts, start } = found;
  const bound = leasts.reduce((sum, { cost }) => sum + cost, 0);
  if (start !== null && leasts.length === pieces.length && costOf(program, start) - bound < 0.5) return { status: 'optimal', values: start, objective: costOf(program, start), bound, nodes: 0 };
  if (options.stop?.stopped === true && start === null) return { status: 'stopped', reason: 'asked', best: null, bound: null, nodes: 0 };
  const answer = await solver.solve(withLeasts(program, leasts), { ...options, ...(start === null ? {} : { start }) });
  if (answer.status !== 'stopped' || start === null) return answer;
  return { ...answer, best: answer.best ?? { values: start, objective: costOf(program, start) } };
}

async function solvePieces(program: Program, links: ReadonlySet<number>, pieces: readonly Piece[], solver: Solver, options: SolveOptions): Promise<PiecesAnswer | null> {
  const { onProgress } = options;
  // What a piece costs says nothing of the whole.
  const quiet = onProgress === undefined ? options : { ...options, onProgress: ({ nodes }: { readonly nodes: number }) => onProgress({ objective: null, bound: null, nodes }) };
  const values: number[] = program.variables.map(({ lower }) => lower);
  const leasts: { variables: readonly number[]; cost: number }[] = [];
  let whole = true;
  for (const piece of pieces) {
    if (options.stop?.stopped === true) return { leasts: [], start: null };
    const answer = await solver.solve(piece.program, quiet);
    if (answer.status === 'infeasible') return null;
    if (answer.status === 'unbounded') throw new Error('Bug: no piece costs less than nothing');
    const best = answer.status === 'optimal' ? answer : answer.best;
    piece.variables.forEach((variable, at) => (values[variable] = best?.values[at] ?? 0));
    whole &&= best !== null;
    // Costs are whole; the bound is a fraction that may be a hair too high.
    if (answer.bound !== null) leasts.push({ variables: piece.variables, cost: Math.ceil(answer.bound - 1e-3 - 1e-11 * Math.abs(answer.bound)) });
  }
  return { leasts, start: whole ? linked(program, links, values) : null };
}

/** Makes every choice that the values ask for; null where that is not enough. */
function linked(program: Program, links: ReadonlySet<number>, values: readonly number[]): readonly number[] | null {
  const made = [...values];
  for (const { kind, at } of violationsOf(program, values)) {
    if (kind === 'row') for (const variable of program.rows[at]?.variables ?? []) if (links.has(variable)) made[variable] = program.variables[variable]?.upper ?? 0;
  }
  return violationsOf(program, made).length === 0 ? made : null;
}

/** The program with a row for each piece: it costs at least so much. */
function withLeasts(program: Program, leasts: PiecesAnswer['leasts']): Program {
  const rows = leasts.flatMap(({ variables, cost }): readonly Row[] => {
    const costing = variables.filter((variable) => program.variables[variable]?.cost !== 0);
    return costing.length === 0 ? [] : [{ lower: cost, upper: Infinity, variables: costing, coefficients: costing.map((variable) => program.variables[variable]?.cost ?? 0) }];
  });
  return { ...program, rows: [...program.rows, ...rows] };
}

/** Some variables of a program and the rows among them. */
interface Piece {
  readonly variables: readonly number[];
  readonly program: Program;
}

/** The pieces that a program falls into where the links may be anything within their bounds. */
function piecesOf(program: Program, links: ReadonlySet<number>): readonly Piece[] {
  const rows = program.rows.map((row) => withoutLinks(program, links, row)).filter((row) => !alwaysHolds(program, row));
  const rowsOf = new Map<number, Row[]>();
  for (const row of rows) {
    for (const variable of row.variables) {
      const known = rowsOf.get(variable);
      if (known === undefined) rowsOf.set(variable, [row]);
      else known.push(row);
    }
  }
  const seen = new Set(links);
  return program.variables.flatMap((_, first) => (seen.has(first) ? [] : [pieceOf(program, ...reachedFrom(first, rowsOf, seen))]));
}

/** The variables reached from one by way of shared rows, and those rows. */
function reachedFrom(first: number, rowsOf: ReadonlyMap<number, readonly Row[]>, seen: Set<number>): readonly [readonly number[], readonly Row[]] {
  const variables = [first];
  const among = new Set<Row>();
  seen.add(first);
  for (const variable of variables) {
    for (const row of rowsOf.get(variable) ?? []) {
      if (among.has(row)) continue;
      among.add(row);
      const others = row.variables.filter((other) => !seen.has(other));
      for (const other of others) seen.add(other);
      variables.push(...others);
    }
  }
  return [variables.sort((a, b) => a - b), [...among]];
}

function pieceOf(program: Program, variables: readonly number[], rows: readonly Row[]): Piece {
  const draft = draftProgram();
  const numbers = new Map(variables.map((variable) => [variable, draft.variable(program.variables[variable] ?? {})]));
  for (const { lower, upper, variables: named, coefficients } of rows) {
    draft.row(lower, named.map((variable, at) => [numbers.get(variable) ?? 0, coefficients[at] ?? 0] as const), upper);
  }
  return { variables, program: draft.program() };
}

/** A row that holds whatever the links in it are. */
function withoutLinks({ variables }: Program, links: ReadonlySet<number>, row: Row): Row {
  if (!row.variables.some((variable) => links.has(variable))) return row;
  const kept = row.variables.flatMap((variable, at) => (links.has(variable) ? [] : [at]));
  const { least, most } = reachOf(variables, row, (variable) => links.has(variable));
  return { lower: row.lower - most, upper: row.upper - least, variables: kept.map((at) => row.variables[at] ?? 0), coefficients: kept.map((at) => row.coefficients[at] ?? 0) };
}

function alwaysHolds({ variables }: Program, row: Row): boolean {
  const { least, most } = reachOf(variables, row, () => true);
  return least >= row.lower && most <= row.upper;
}

/** The least and the most that some terms of a row can come to. */
function reachOf(variables: Program['variables'], row: Row, counts: (variable: number) => boolean): { readonly least: number; readonly most: number } {
  let [least, most] = [0, 0];
  row.variables.forEach((variable, at) => {
    const [bounds, coefficient] = [variables[variable], row.coefficients[at] ?? 0];
    if (bounds === undefined || !counts(variable)) return;
    const ends = [coefficient * bounds.lower, coefficient * bounds.upper];
    least += Math.min(...ends);
    most += Math.max(...ends);
  });
  return { least, most };
}
