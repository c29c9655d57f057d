import type { Highs, HighsCallbackMap, Model, OptionValue } from 'highs';
import { costOf } from '../../shared-core/integer-program/check-values.ts';
import type { Program } from '../../shared-core/integer-program/program.ts';
import type { FoundValues, ProgramAnswer, SolveOptions, SolveProgress, StopReason } from '../../shared-core/integer-program/solver.ts';
import { highsModel } from './highs-model.ts';

/** The part of the options that can be sent to a worker. */
export type SolveLimits = Omit<SolveOptions, 'onProgress' | 'stop'>;

/** Told what a solve finds while it runs; must not take long. */
export interface SolveWatcher {
  found(values: FoundValues): void;
  progress(progress: SolveProgress): void;
}

/** Progress is told at most this often. */
const MILLISECONDS_BETWEEN_PROGRESS = 200;

/**
 * Solves a program on a loaded HiGHS and blocks until it ends. HiGHS runs on one thread with a fixed seed, so it repeats itself.
 *
 * @throws where HiGHS fails; the instance is then not to be used again.
 */
export function runHighs(highs: Highs, program: Program, limits: SolveLimits, watcher: SolveWatcher): ProgramAnswer {
  if (program.variables.length === 0) return solveWithoutVariables(program);
  return highs.withModel(highsModel(program), (model): ProgramAnswer => {
    model.options.set(optionsOf(program, limits));
    if (limits.start !== undefined) model.raw.setSolution({ colValue: [...limits.start] });
    const { modelStatus } = model.run(callbacksOf(highs, program, limits, watcher));
    const status = highs.constants.modelStatus;
    if (modelStatus === status.unboundedOrInfeasible) return tellApart(highs, program, limits);
    if (modelStatus === status.infeasible) return { status: 'infeasible' };
    if (modelStatus === status.unbounded) return { status: 'unbounded' };
    return answerOf(highs, model, program, modelStatus);
  });
}

/** HiGHS calls a program without variables empty and looks no further; its rows then hold or not as they stand. */
function solveWithoutVariables(program: Program): ProgramAnswer {
  const holds = program.rows.every((row) => row.lower <= 0 && row.upper >= 0);
  return holds ? { status: 'optimal', values: [], objective: 0, bound: 0, nodes: 0 } : { status: 'infeasible' };
}

function optionsOf(program: Program, limits: SolveLimits): Record<string, OptionValue> {
  const tolerance = limits.tolerance ?? 1e-6;
  const optional: Record<string, OptionValue | undefined> = {
    mip_max_nodes: limits.nodeLimit,
    time_limit: limits.timeLimitSeconds,
    simplex_iteration_limit: isWhole(program) ? undefined : limits.iterationLimit,
  };
  return {
    output_flag: false,
    random_seed: 0,
    mip_rel_gap: limits.relativeGap ?? 0,
    mip_abs_gap: limits.absoluteGap ?? 1e-6,
    mip_feasibility_tolerance: tolerance,
    primal_feasibility_tolerance: Math.min(tolerance, 1e-7),
    ...Object.fromEntries(Object.entries(optional).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]]))),
  };
}

function isWhole(program: Program): boolean {
  return program.variables.some((variable) => variable.whole);
}

/** HiGHS tells of progress only at its interrupt points while its log is off. */
function callbacksOf(highs: Highs, program: Program, limits: SolveLimits, watcher: SolveWatcher): HighsCallbackMap {
  const type = highs.constants.callbackType;
  let told = Date.now();
  return {
    [type.mipImprovingSolution]: (event) => {
      if (event.data.mip_solution !== undefined) watcher.found(wholeValues(program, event.data.mip_solution));
    },
    [type.mipInterrupt]: (event) => {
      if (Number(event.data.mip_total_lp_iterations ?? 0) >= (limits.iterationLimit ?? Infinity)) event.interrupt();
      if (Date.now() - told < MILLISECONDS_BETWEEN_PROGRESS) return;
      told = Date.now();
      const { mip_primal_bound: objective, mip_dual_bound: bound, mip_node_count: nodes } = event.data;
      watcher.progress({ objective: finite(objective), bound: finite(bound), nodes: Number(nodes ?? 0) });
    },
  };
}

function answerOf(highs: Highs, model: Model, program: Program, modelStatus: number): ProgramAnswer {
  const allowed = Number(model.info.get('primal_solution_status')) === highs.constants.solutionStatus.feasible;
  const best = allowed ? wholeValues(program, model.getSolution().colValue) : null;
  const nodes = isWhole(program) ? Number(model.info.get('mip_node_count')) : 0;
  if (modelStatus === highs.constants.modelStatus.optimal) {
    if (best === null) throw new Error('HiGHS calls values optimal that it does not hold to be allowed');
    return { status: 'optimal', ...best, bound: isWhole(program) ? Number(model.info.get('mip_dual_bound')) : best.objective, nodes };
  }
  const bound = isWhole(program) ? finite(Number(model.info.get('mip_dual_bound'))) : null;
  return { status: 'stopped', reason: reasonOf(highs, modelStatus), best, bound, nodes };
}

function reasonOf(highs: Highs, modelStatus: number): StopReason {
  const status = highs.constants.modelStatus;
  if (modelStatus === status.timeLimit) return 'time';
  if (modelStatus === status.solutionLimit) return 'nodes';
  if (modelStatus === status.iterationLimit || modelStatus === status.interrupted) return 'iterations';
  throw new Error(`HiGHS ended with status ${modelStatus}`);
}

/** Presolve may not say which of the two it is. Without costs nothing is unbounded: then any allowed values settle it. */
function tellApart(highs: Highs, program: Program, limits: SolveLimits): ProgramAnswer {
  const free: Program = { ...program, variables: program.variables.map((variable) => ({ ...variable, cost: 0 })) };
  const { start: _start, ...rest } = limits;
  const answer = runHighs(highs, free, rest, { found: () => undefined, progress: () => undefined });
  return answer.status === 'optimal' ? { status: 'unbounded' } : answer;
}

/** Whole variables made exactly whole (they are so within the tolerance), and the cost of the values as they then are. */
function wholeValues(program: Program, raw: ArrayLike<number>): FoundValues {
  const values = program.variables.map((variable, at) => (variable.whole ? Math.round(raw[at] ?? NaN) + 0 : (raw[at] ?? NaN)));
  return { values, objective: costOf(program, values) };
}

function finite(n: number | undefined): number | null {
  return n !== undefined && Number.isFinite(n) && Math.abs(n) < 1e29 ? n : null;
}
