import { must } from '../result/assert.ts';
import { leftCost } from './plan-board.ts';
import { boundOf, type PlanBound } from './plan-bound.ts';
import { LEFT, type Placement, type PlanFacts } from './plan-facts.ts';
import { improve } from './plan-improve.ts';
import { boardWith, insertAll } from './plan-insert.ts';
import { isProved, noteProved, offerBoard, rememberSessions, type Quest, type QuestOptions } from './plan-quest.ts';

/** How an ascent goes: so many rounds, the first step in parts of the way to the best plan, and every how many rounds a plan is made of it. */
export interface AscentRule {
  readonly rounds: number;
  readonly step: number;
  readonly planEvery: number;
}

/** After so many rounds without a better bound the steps get smaller, by this factor. */
const [PATIENCE, SHORTER] = [12, 0.6];
/** What of a step's direction is new; the rest is the direction before. */
const NEW_PART = 0.5;

/**
 * Raises the bound by moving the prices: of a task that no session wants up, of one that several want down. Now and then makes a plan of the
 * sessions of the moment. Ends early where the best plan is proved, or a stop is asked for.
 *
 * Source: subgradient steps toward a known value (Polyak 1969), deflected; from memory.
 */
export async function raiseBound(quest: Quest, rule: AscentRule, options: QuestOptions): Promise<void> {
  const { facts } = quest;
  let prices = quest.priced?.prices ?? firstPrices(facts);
  let direction = new Float64Array(facts.tasks.length);
  let [step, idle] = [rule.step, 0];
  for (let round = 1; round <= rule.rounds && !isProved(quest) && options.stop?.stopped !== true; round += 1) {
    const bound = boundOf(facts, quest.sacks, prices);
    idle = takeBound(quest, bound) ? 0 : idle + 1;
    if (idle > PATIENCE) [step, idle] = [step * SHORTER, 0];
    const from = idle === 0 ? must(quest.priced, 'bound') : bound;
    rememberSessions(quest, bound);
    if (round % rule.planEvery === 0) planFrom(quest, bound);
    direction = turned(facts, from, direction);
    const length = direction.reduce((sum, part) => sum + part * part, 0);
    if (length === 0) break;
    const by = (step * (quest.totalMinor - from.minor)) / length;
    prices = from.prices.map((price, at) => price + by * (direction[at] ?? 0));
    await breathe(quest, round, options);
  }
}

/** Keeps a bound that is better; true where it is so by enough to go on with steps of this length. */
function takeBound(quest: Quest, bound: PlanBound): boolean {
  const before = quest.priced?.minor ?? -Infinity;
  if (bound.minor <= before) return false;
  quest.priced = bound;
  noteProved(quest, bound.minor);
  return bound.minor > before + 0.0002 * Math.abs(before) || before === -Infinity;
}

/** What each task is worth at first: its cheapest option and something for opening. */
function firstPrices(facts: PlanFacts): Float64Array {
  const openings = facts.slots.map(({ openingMinor }) => openingMinor).sort((a, b) => a - b);
  const share = (openings[0] ?? 0) / 5;
  return Float64Array.from(facts.tasks, (task) => {
    const cheapest = task.options.reduce((least, { costMinor }) => Math.min(least, costMinor), leftCost(facts, task));
    return cheapest + share;
  });
}

/** The next direction: up where no session wants a task, down where more than one does. */
function turned(facts: PlanFacts, { sessions, prices }: PlanBound, before: Float64Array): Float64Array<ArrayBuffer> {
  const wanting = new Int32Array(facts.tasks.length);
  for (const { tasks } of sessions) for (const task of tasks) wanting[task] = (wanting[task] ?? 0) + 1;
  return Float64Array.from(facts.tasks, (task, at) => {
    const leftOut = wanting[at] === 0 && (prices[at] ?? 0) >= leftCost(facts, task);
    const pull = leftOut ? 0 : 1 - (wanting[at] ?? 0);
    return NEW_PART * pull + (1 - NEW_PART) * (before[at] ?? 0);
  });
}

/** A plan from the sessions of a bound, the most valuable first where several want a task; the rest is put where it costs least. */
function planFrom(quest: Quest, { sessions }: PlanBound): void {
  const placement: Placement = new Int32Array(quest.facts.tasks.length).fill(LEFT);
  const bySaving = sessions.map(({ value, tasks }, slot) => ({ value, tasks, slot })).sort((a, b) => a.value - b.value || a.slot - b.slot);
  for (const { tasks, slot } of bySaving) for (const task of tasks) if (placement[task] === LEFT) placement[task] = slot;
  const board = boardWith(quest.facts, placement);
  insertAll(board);
  improve(board);
  offerBoard(quest, board);
}

async function breathe(quest: Quest, round: number, { onProgress, pause }: QuestOptions): Promise<void> {
  if (round % 10 === 0) onProgress?.({ objective: quest.totalMinor, bound: quest.provedMinor, nodes: 0 });
  await pause?.();
}
