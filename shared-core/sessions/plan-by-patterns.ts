import type { ProgramAnswer, SolveOptions, Solver } from '../integer-program/solver.ts';
import type { PlanBound } from './plan-bound.ts';
import { sessionsWithin } from './plan-enumerate.ts';
import { improve } from './plan-improve.ts';
import { boardWith } from './plan-insert.ts';
import { patternKey, type PlanPattern } from './plan-pattern.ts';
import { patternModel, placementOf, type PatternModel } from './plan-pattern-model.ts';
import { noteProved, offerBoard, sessionsOf, type Quest } from './plan-quest.ts';

/** All sessions that can stand in a plan that costs no more than `ceilingMinor`; where that is `complete`, in any plan cheaper than the best. */
export interface LikelySessions {
  readonly patterns: readonly PlanPattern[];
  readonly ceilingMinor: number;
  readonly complete: boolean;
}

/** Pooled sessions are left out where any plan with them is above the bound by more than this part of it: no plan is hoped for up there. */
const HOPED_FOR = 0.008;

/** Lets the solver choose among the sessions of the pool: a good plan, and nothing proved. */
export async function choosePooled(quest: Quest, solver: Solver, options: SolveOptions, cover: 'once' | 'at-least'): Promise<void> {
  const { facts, placement, grain } = quest;
  const model = patternModel(facts, withBest(quest, hopefulSessions(quest)), { cover, known: placement, grain });
  takePlan(quest, model, await solver.solve(model.program, { ...options, start: model.start, absoluteGap: 0.9, relativeGap: 0 }));
}

function hopefulSessions({ priced, pool, totalMinor, grain }: Quest): readonly PlanPattern[] {
  if (priced === null) return [];
  const farthest = Math.min(totalMinor - grain - priced.minor, HOPED_FOR * priced.minor);
  return [...pool.values()].filter((pattern) => distanceOf(pattern, priced) <= farthest);
}

/** The sessions and those of the best plan, in an order that tells the solver nothing. */
function withBest(quest: Quest, patterns: readonly PlanPattern[]): readonly PlanPattern[] {
  const all = new Map([...sessionsOf(quest), ...patterns].map((pattern) => [patternKey(pattern), pattern]));
  return [...all].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, pattern]) => pattern);
}

/** How far above the bound any plan with this session is. */
function distanceOf({ slot, tasks, costMinor }: PlanPattern, { prices, sessions }: PlanBound): number {
  return tasks.reduce((sum, task) => sum - (prices[task] ?? 0), costMinor) - (sessions[slot]?.value ?? 0);
}

/** The sessions for plans that cost no more than a sum, or no more than is less than the best plan; null where they are more than `most`. */
export function likelySessions({ facts, sacks, totalMinor, grain, priced }: Quest, wantedMinor: number, most: number): LikelySessions | null {
  if (priced === null) return null;
  const ceilingMinor = Math.floor(Math.min(wantedMinor, totalMinor - grain) / grain) * grain;
  const patterns = sessionsWithin(facts, sacks, priced, ceilingMinor - priced.minor, most);
  return patterns === null ? null : { patterns, ceilingMinor, complete: ceilingMinor === totalMinor - grain };
}

/**
 * Lets the solver look for a plan within the ceiling, among all sessions that such a plan can have. That it must stay below the ceiling is
 * what makes this quick: either there is none, and the bound rises to the ceiling, or the cheapest that is found is the cheapest of all. Of
 * complete sessions it chooses the cheapest plan, starting from the best known: there a ceiling would only hide good plans.
 *
 * @returns whether the question was settled
 */
export async function chooseLikely(quest: Quest, solver: Solver, options: SolveOptions, likely: LikelySessions): Promise<boolean> {
  const { facts, grain, placement } = quest;
  const { complete, ceilingMinor } = likely;
  const model = complete
    ? patternModel(facts, withBest(quest, likely.patterns), { cover: 'once', known: placement, grain })
    : patternModel(facts, likely.patterns, { cover: 'once', ceilingMinor, grain });
  const answer = await solver.solve(model.program, { ...options, ...(complete ? { start: model.start } : {}), absoluteGap: 0.9, relativeGap: 0 });
  takePlan(quest, model, answer);
  if (answer.status === 'optimal') noteProved(quest, quest.totalMinor);
  else noteProved(quest, answer.status === 'stopped' ? Math.min((answer.bound ?? 0) * grain, ceilingMinor + grain) : ceilingMinor + grain);
  return answer.status !== 'stopped';
}

function takePlan(quest: Quest, model: PatternModel, answer: ProgramAnswer): void {
  const found = answer.status === 'optimal' ? answer : answer.status === 'stopped' ? answer.best : null;
  if (found === null) return;
  const board = boardWith(quest.facts, placementOf(quest.facts, model, found.values));
  improve(board);
  offerBoard(quest, board);
}
