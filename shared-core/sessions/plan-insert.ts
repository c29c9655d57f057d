import { must } from '../result/assert.ts';
import { costOfPutting, emptyBoard, optionTo, putTask, tryPutting, type Board } from './plan-board.ts';
import { LEFT, type Placement, type PlanFacts } from './plan-facts.ts';

/** A board with the tasks of a placement; one that does not fit where it is said to be is left out. */
export function boardWith(facts: PlanFacts, placement: Placement): Board {
  const board = emptyBoard(facts);
  placement.forEach((slot, task) => tryPutting(board, task, optionTo(board, task, slot)));
  return board;
}

/** A way to put a left-out task: option LEFT and cost 0 where leaving it is cheapest. */
export interface Insertion {
  readonly option: number;
  readonly costMinor: number;
  /** What the second best would cost more. */
  readonly regretMinor: number;
}

/** The cheapest way to put a left-out task, a barred slot aside. */
export function cheapestInsertion(board: Board, task: number, barred: number = LEFT): Insertion {
  let [option, costMinor, second] = [LEFT, 0, Infinity];
  const { options } = must(board.facts.tasks[task], 'task');
  for (let at = 0; at < options.length; at += 1) {
    if (options[at]?.slot === barred) continue;
    const here = costOfPutting(board, task, at);
    if (here < costMinor) [option, costMinor, second] = [at, here, costMinor];
    else if (here < second) second = here;
  }
  return { option, costMinor, regretMinor: Math.min(second, 0) - costMinor };
}

/** Puts left-out tasks where they cost least, always the one next that would lose most by waiting; a barred slot aside. */
export function insertAll(board: Board, barred: number = LEFT): void {
  const waiting = new Set([...board.placement.keys()].filter((task) => board.placement[task] === LEFT));
  for (;;) {
    const ways = [...waiting].map((task) => ({ task, ...cheapestInsertion(board, task, barred) })).filter(({ option }) => option !== LEFT);
    const [first, ...others] = ways;
    if (first === undefined) return;
    const next = others.reduce((best, way) => (way.regretMinor > best.regretMinor ? way : best), first);
    putTask(board, next.task, next.option);
    waiting.delete(next.task);
  }
}
