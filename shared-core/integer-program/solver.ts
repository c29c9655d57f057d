import type { Program } from './program.ts';

/**
 * Solves programs; given to the core as an argument, so that the core holds no solver of its own.
 * The same program and options give the same answer, unless a time limit or a stop ends it early.
 * A promise is rejected only where the solver itself failed (no memory, a crash): never for what the program says.
 */
export interface Solver {
  solve(program: Program, options?: SolveOptions): Promise<ProgramAnswer>;
}

/** How far to go. Without any of these the solver goes on until the optimum is proved. */
export interface SolveOptions {
  /** Proved when `objective - bound` is at most this; 0.000001 if not given. For whole costs, 0.9 proves as much and sooner. */
  readonly absoluteGap?: number;
  /** Proved when the gap is at most this part of the objective; 0 if not given. */
  readonly relativeGap?: number;
  /** How far a row or a whole value may be off; 0.000001 if not given. */
  readonly tolerance?: number;
  /** Stops after so many nodes of the search tree: repeatable. */
  readonly nodeLimit?: number;
  /** Stops after so many simplex iterations in any one linear program: repeatable. */
  readonly iterationLimit?: number;
  /** Stops after so many seconds: not repeatable. */
  readonly timeLimitSeconds?: number;
  /** Values to start from, one for each variable; ignored where they are not allowed. */
  readonly start?: readonly number[];
  /** Told now and then how far it is. */
  readonly onProgress?: (progress: SolveProgress) => void;
  /** Asks for an early end. */
  readonly stop?: StopSignal;
}

/** How far a solve has come: null while there is none. */
export interface SolveProgress {
  readonly objective: number | null;
  readonly bound: number | null;
  readonly nodes: number;
}

/** A wish to stop that may come at any time; an AbortSignal is easily wrapped as one. */
export interface StopSignal {
  readonly stopped: boolean;
  /** Calls the listener once, when the wish comes; hands out a function that forgets the listener. */
  onStop(listener: () => void): () => void;
}

/**
 * What a solve ended with.
 * - `optimal`: `values` is allowed and no allowed values cost less, within the gap asked for. `bound` is what was proved: no
 *   allowed values cost less than it.
 * - `infeasible`: no values are allowed.
 * - `unbounded`: the cost can be made as small as one likes.
 * - `stopped`: ended before a proof. `best` is the cheapest allowed values found, null where none was; `bound` as above, null
 *   where nothing was proved yet.
 */
export type ProgramAnswer =
  | ({ readonly status: 'optimal'; readonly bound: number; readonly nodes: number } & FoundValues)
  | { readonly status: 'infeasible' }
  | { readonly status: 'unbounded' }
  | {
      readonly status: 'stopped';
      readonly reason: StopReason;
      readonly best: FoundValues | null;
      readonly bound: number | null;
      readonly nodes: number;
    };

/** Allowed values, one for each variable in order, and their cost. Whole variables are exactly whole. */
export interface FoundValues {
  readonly values: readonly number[];
  readonly objective: number;
}

/** What ended a solve before its proof: a limit that was given, or the stop signal. */
export type StopReason = 'nodes' | 'iterations' | 'time' | 'asked';
