import type { Program } from '../../shared-core/integer-program/program.ts';
import type { FoundValues, ProgramAnswer, SolveProgress } from '../../shared-core/integer-program/solver.ts';
import type { SolveLimits } from './highs-run.ts';

/** What the solver's worker is asked: one program at a time. */
export interface SolveRequest {
  readonly program: Program;
  readonly limits: SolveLimits;
}

/** What the worker says: the first two any number of times, then one of the last two. */
export type SolveReply =
  | { readonly kind: 'found'; readonly found: FoundValues }
  | { readonly kind: 'progress'; readonly progress: SolveProgress }
  | { readonly kind: 'ended'; readonly answer: ProgramAnswer }
  | { readonly kind: 'failed'; readonly problem: string };
