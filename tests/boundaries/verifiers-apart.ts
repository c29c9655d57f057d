import { importsOf, type Import } from './imports.ts';
import { faultAt, type Rule, type Source } from './source.ts';

/** A verifier and the solver that it judges; the solver of orders asks its verifier itself, so it is not held to this. */
const [VERIFIER, SOLVER] = ['shared-core/sessions/plan-verify.ts', 'shared-core/sessions/plan-solve.ts'];

/** What both may speak: language, plain values, and the form of the question and of the answer. */
const SHARED = /^shared-core\/((result|units|calendar)\/|sessions\/plan-(instance|answer)\.ts$)/;

/** A verifier holds no code of the solver that it judges, near or far: a slip in what both reckon with would be judged right. */
export const verifiersApart: Rule = (sources) => {
  const byFile = new Map(sources.map((source) => [source.file, source]));
  const ofSolver = new Set([SOLVER, ...reached(byFile, SOLVER).map(({ target }) => target)]);
  const shared = reached(byFile, VERIFIER).filter(({ target }) => ofSolver.has(target) && !SHARED.test(target));
  return shared.map((one) => faultAt(one.from, one.node, `${SOLVER} reckons with ${one.target} too: a verifier reckons by itself`));
};

/** Every import of code of our own that a file leads to. */
function reached(byFile: ReadonlyMap<string, Source>, file: string, seen: Set<string> = new Set([file])): Import[] {
  const source = byFile.get(file);
  if (source === undefined) return [];
  const own = importsOf(source).filter((one) => one.ours && !one.typeOnly);
  return own.flatMap((one): Import[] => {
    if (seen.has(one.target)) return [one];
    seen.add(one.target);
    return [one, ...reached(byFile, one.target, seen)];
  });
}
