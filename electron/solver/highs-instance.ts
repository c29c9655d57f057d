import * as highsPackage from 'highs';
import type { Highs } from 'highs';
import type { Program } from '../../shared-core/integer-program/program.ts';
import type { ProgramAnswer, Solver } from '../../shared-core/integer-program/solver.ts';
import { runHighs, type SolveLimits, type SolveWatcher } from './highs-run.ts';

/** A HiGHS that may be asked again and again; after a failure it loads itself anew, since a failed one holds broken memory. */
export interface HighsInstance {
  solve(program: Program, limits: SolveLimits, watcher: SolveWatcher): Promise<ProgramAnswer>;
}

/** The package's types describe its CommonJS build, where the loader is `default` of the default; its ES module build, which runs, has it one step nearer. */
type Loader = typeof highsPackage.default.default;
const loadHighs = highsPackage.default as unknown as Loader;

/** Makes a HighsInstance; HiGHS itself (3 MB) is loaded on the first solve. */
export function highsInstance(): HighsInstance {
  let loaded: Promise<Highs> | null = null;
  return {
    solve: async (program, limits, watcher) => {
      loaded ??= loadHighs();
      try {
        return runHighs(await loaded, program, limits, watcher);
      } catch (failure) {
        loaded = null;
        throw failure;
      }
    },
  };
}

/**
 * A solver in the calling thread, which it blocks: for tests, commands and threads of their own. `stop` is looked at only before it starts.
 *
 * @example await directSolver().solve(program) //=> { status: 'optimal', ... }
 */
export function directSolver(): Solver {
  const instance = highsInstance();
  return {
    solve: async (program, options = {}) => {
      const { onProgress, stop, ...limits } = options;
      if (stop?.stopped === true) return { status: 'stopped', reason: 'asked', best: null, bound: null, nodes: 0 };
      return instance.solve(program, limits, { found: () => undefined, progress: (progress) => onProgress?.(progress) });
    },
  };
}
