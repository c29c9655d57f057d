import type { SolveOptions, Solver } from '../integer-program/solver.ts';
import { raiseBound } from './plan-ascent.ts';
import { chooseLikely, choosePooled, likelySessions, type LikelySessions } from './plan-by-patterns.ts';
import { patternKey } from './plan-pattern.ts';
import { boardWith } from './plan-insert.ts';
import { placementIn, planModel } from './plan-model.ts';
import { dropOptions, isProved, noteProved, offerBoard, type Quest, type QuestOptions } from './plan-quest.ts';

/** A time limit holds for each of the programs solved; `effort` says when good is good enough. */
export interface PlanOptions extends QuestOptions, Pick<SolveOptions, 'timeLimitSeconds'> {
  /** `measured`, if not given: a repeatable amount of work, after which a large plan may be left unproved; `proof`: on and on until proved. */
  readonly effort?: 'measured' | 'proof';
}

/** Simplex iterations that making a plan of pooled sessions may take. */
const POOLED_ITERATIONS = 4000;
/** How many likely sessions go into the pool, and how many the first ceiling gives at most. */
const [POOLED_SESSIONS, FIRST_SESSIONS] = [2000, 3000];
/** By what factor the way from the bound to the ceiling is narrowed in search of few enough sessions, and widened from one ceiling to the next. */
const [NARROWER, WIDER] = [0.7, 1.3];
/** A plan that is not this close to its bound is worked on harder. */
const CLOSE_ENOUGH = 0.01;
/** A plan of no more tasks than this is not large. */
const NOT_LARGE = 40;

/** How much work each step may take: simplex iterations for a search below a ceiling or for placing tasks, and sessions to choose among. */
interface Allowance {
  readonly searchIterations: number;
  readonly placingIterations: number;
  readonly mostSessions: number;
}

const LARGE: Allowance = { searchIterations: 2500, placingIterations: 10_000, mostSessions: 16_000 };
const LARGE_AND_FAR: Allowance = { ...LARGE, mostSessions: 32_000 };
const SMALL: Allowance = { searchIterations: 50_000, placingIterations: 100_000, mostSessions: 32_000 };
const UNTIL_PROVED: Allowance = { searchIterations: Infinity, placingIterations: Infinity, mostSessions: 64_000 };

function allowanceOf(quest: Quest, { effort }: PlanOptions): Allowance {
  if (effort === 'proof') return UNTIL_PROVED;
  if (quest.facts.tasks.length <= NOT_LARGE) return SMALL;
  return gapOf(quest) > CLOSE_ENOUGH ? LARGE_AND_FAR : LARGE;
}

/**
 * Looks for the cheapest plan until it is proved or given up: raises a bound with prices, lets the solver make a good plan of the sessions that
 * came up, drops the options that no cheaper plan can take, places few tasks singly, and else asks for a plan below one ceiling after another.
 */
export async function provePlan(quest: Quest, solver: Solver, options: PlanOptions): Promise<void> {
  const isOver = () => isProved(quest) || options.stop?.stopped === true;
  await raiseBound(quest, { rounds: 300, step: 1, planEvery: 20 }, options);
  if (isOver()) return;
  await makePlan(quest, solver, options, 'at-least');
  dropOptions(quest);
  await raiseBound(quest, { rounds: 100, step: 0.1, planEvery: 50 }, options);
  const isLarge = quest.facts.tasks.length > NOT_LARGE;
  if (!isOver() && !isLarge) await placeTasks(quest, solver, options);
  const isFew = isOver() || (await riseByCeilings(quest, solver, options, isOver));
  if (!isOver() && gapOf(quest) > CLOSE_ENOUGH) await makePlan(quest, solver, options, 'once');
  if (!isOver() && isLarge && (!isFew || options.effort === 'proof')) await placeTasks(quest, solver, options);
}

/** What a solver is told of the options. */
export function limitsOf({ timeLimitSeconds, stop, onProgress }: PlanOptions): SolveOptions {
  return { ...(timeLimitSeconds === undefined ? {} : { timeLimitSeconds }), ...(stop === undefined ? {} : { stop }), ...(onProgress === undefined ? {} : { onProgress }) };
}

/** Lets the solver make a plan of the pool, to which the likeliest sessions are added. */
async function makePlan(quest: Quest, solver: Solver, options: PlanOptions, cover: 'once' | 'at-least'): Promise<void> {
  for (const pattern of firstCeiling(quest, POOLED_SESSIONS)?.patterns ?? []) quest.pool.set(patternKey(pattern), pattern);
  await choosePooled(quest, solver, { ...limitsOf(options), iterationLimit: POOLED_ITERATIONS }, cover);
}

/** @returns whether the sessions of some ceiling were few enough to be looked through */
async function riseByCeilings(quest: Quest, solver: Solver, options: PlanOptions, isOver: () => boolean): Promise<boolean> {
  const first = firstCeiling(quest, FIRST_SESSIONS);
  let likely = first;
  while (likely !== null && !isOver()) {
    const { searchIterations } = allowanceOf(quest, options);
    const iterations = (likely.complete ? 2 : 1) * searchIterations;
    const settled = await chooseLikely(quest, solver, { ...limitsOf(options), iterationLimit: iterations }, likely);
    const bound = quest.priced?.minor ?? 0;
    const next = bound + WIDER * (likely.ceilingMinor + quest.grain - bound);
    likely = settled ? likelySessions(quest, next, allowanceOf(quest, options).mostSessions) : null;
  }
  return first !== null;
}

/** The sessions below the highest ceiling, no higher than the best plan, that gives few enough; null where even the lowest gives more. */
function firstCeiling(quest: Quest, most: number): LikelySessions | null {
  const bound = quest.priced?.minor ?? 0;
  for (let way = quest.totalMinor - bound; way > quest.grain / 2; way *= NARROWER) {
    const likely = likelySessions(quest, bound + way, most);
    if (likely !== null) return likely;
  }
  return null;
}

/** The solver places single tasks among the options that are left: of few tasks that is quickest, of many it is the last resort. */
async function placeTasks(quest: Quest, solver: Solver, options: PlanOptions): Promise<void> {
  dropOptions(quest);
  const { facts, keep, placement, grain } = quest;
  const model = planModel(facts, 'cost', (task, slot) => keep(task, slot) || placement[task] === slot);
  const limits = { ...limitsOf(options), iterationLimit: allowanceOf(quest, options).placingIterations };
  const answer = await solver.solve(model.program, { ...limits, absoluteGap: 0.9 * grain, relativeGap: 0 });
  const found = answer.status === 'optimal' ? answer : answer.status === 'stopped' ? answer.best : null;
  if (found !== null) offerBoard(quest, boardWith(facts, placementIn(facts, model, found.values)));
  if (answer.status === 'optimal' || answer.status === 'stopped') noteProved(quest, answer.bound ?? 0);
}

function gapOf({ totalMinor, provedMinor }: Quest): number {
  return (totalMinor - provedMinor) / Math.max(1, totalMinor);
}
