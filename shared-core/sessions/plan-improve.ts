import { must } from '../result/assert.ts';
import { costOfPutting, optionTo, putTask, takeTask, tasksOn, tryPutting, type Board } from './plan-board.ts';
import { LEFT } from './plan-facts.ts';
import { cheapestInsertion, insertAll } from './plan-insert.ts';

/** Improves a board until no small change helps: a task moved, two exchanged, a session given up, one moved, one opened. */
export function improve(board: Board): void {
  while (moveEach(board) || exchangePairs(board) || giveUpSessions(board) || moveSessions(board) || openSessions(board));
}

function moveEach(board: Board): boolean {
  let helped = false;
  for (const task of board.placement.keys()) {
    const [before, option] = [board.totalMinor, board.option[task] ?? LEFT];
    takeTask(board, task);
    const best = cheapestInsertion(board, task);
    tryPutting(board, task, best.option);
    if (board.totalMinor < before) helped = true;
    else if (best.option !== option) {
      takeTask(board, task);
      tryPutting(board, task, option);
    }
  }
  return helped;
}

function exchangePairs(board: Board): boolean {
  let helped = false;
  const count = board.placement.length;
  for (let a = 0; a < count; a += 1) for (let b = a + 1; b < count; b += 1) if (exchange(board, a, b)) helped = true;
  return helped;
}

/** Exchanges the slots of two tasks, one of which may be left out. */
function exchange(board: Board, a: number, b: number): boolean {
  const [slotA = LEFT, slotB = LEFT] = [board.placement[a], board.placement[b]];
  if (slotA === slotB) return false;
  const [aThere, bThere] = [optionTo(board, a, slotB), optionTo(board, b, slotA)];
  if ((slotB !== LEFT && aThere === LEFT) || (slotA !== LEFT && bThere === LEFT)) return false;
  const [before, aHere = LEFT, bHere = LEFT] = [board.totalMinor, board.option[a], board.option[b]];
  takeTask(board, a);
  takeTask(board, b);
  if (tryPutting(board, a, aThere) && tryPutting(board, b, bThere) && board.totalMinor < before) return true;
  takeTask(board, a);
  takeTask(board, b);
  tryPutting(board, a, aHere);
  tryPutting(board, b, bHere);
  return false;
}

/** Tries a change of the board; where it does not help, puts every task back. */
function attempt(board: Board, change: () => void): boolean {
  const [before, options] = [board.totalMinor, board.option.slice()];
  change();
  if (board.totalMinor < before) return true;
  const moved = [...options.keys()].filter((task) => board.option[task] !== options[task]);
  for (const task of moved) takeTask(board, task);
  for (const task of moved) tryPutting(board, task, options[task] ?? LEFT);
  return false;
}

function slotsThat(board: Board, hold: boolean): readonly number[] {
  return [...board.facts.slots.keys()].filter((slot) => (board.held[slot] ?? 0) > 0 === hold);
}

function giveUpSessions(board: Board): boolean {
  const change = (slot: number) => () => {
    for (const task of tasksOn(board, slot)) takeTask(board, task);
    insertAll(board, slot);
  };
  return slotsThat(board, true).map((slot) => attempt(board, change(slot))).includes(true);
}

/** A whole session to a slot that is closed so far. */
function moveSessions(board: Board): boolean {
  const change = (from: number, to: number) => () => {
    const moving = tasksOn(board, from);
    for (const task of moving) takeTask(board, task);
    for (const task of moving) tryPutting(board, task, optionTo(board, task, to));
    insertAll(board, from);
  };
  let helped = false;
  for (const from of slotsThat(board, true)) {
    for (const to of slotsThat(board, false)) if (mayMove(board, from, to) && attempt(board, change(from, to))) helped = true;
  }
  return helped;
}

/** Whether at least half of a session's tasks may be done in the other slot at all. */
function mayMove(board: Board, from: number, to: number): boolean {
  const tasks = tasksOn(board, from);
  return tasks.length > 0 && 2 * tasks.filter((task) => optionTo(board, task, to) !== LEFT).length >= tasks.length;
}

function openSessions(board: Board): boolean {
  const tried = slotsThat(board, false).map((slot) => {
    const gains = gainsOn(board, slot);
    return gains.length > 0 && attempt(board, () => fillSlot(board, gains));
  });
  return tried.includes(true);
}

interface Gain {
  readonly task: number;
  readonly option: number;
  readonly gain: number;
}

/** What would be better off on a closed slot if it were open, what gains most first. */
function gainsOn(board: Board, slot: number): readonly Gain[] {
  const gains = [...board.placement.keys()].map((task) => ({ task, option: optionTo(board, task, slot), gain: gainOf(board, task, slot) }));
  return gains.filter(({ gain }) => gain > 0).sort((a, b) => b.gain - a.gain || a.task - b.task);
}

function fillSlot(board: Board, gains: readonly Gain[]): void {
  for (const { task, option } of gains) {
    const here = board.option[task] ?? LEFT;
    takeTask(board, task);
    if (!tryPutting(board, task, option)) tryPutting(board, task, here);
  }
  insertAll(board);
}

function gainOf(board: Board, task: number, slot: number): number {
  const there = optionTo(board, task, slot);
  if (there === LEFT) return -Infinity;
  const [before, here = LEFT] = [board.totalMinor, board.option[task]];
  takeTask(board, task);
  const gain = before - board.totalMinor - costOfPutting(board, task, there) + must(board.facts.slots[slot], 'slot').openingMinor;
  tryPutting(board, task, here);
  return gain;
}

/** Among plans of the same cost, moves single tasks to the earliest slot that costs no more: the same plan however it was found, as far as single moves go. */
export function moveEarlier(board: Board): void {
  for (let moved = true; moved; ) {
    moved = false;
    for (const task of board.placement.keys()) if (moveOneEarlier(board, task)) moved = true;
  }
}

function moveOneEarlier(board: Board, task: number): boolean {
  const [before, here = LEFT] = [board.totalMinor, board.option[task]];
  takeTask(board, task);
  const last = here === LEFT ? must(board.facts.tasks[task], 'task').options.length : here;
  for (let option = 0; option < last; option += 1) {
    if (board.totalMinor + costOfPutting(board, task, option) > before) continue;
    putTask(board, task, option);
    return true;
  }
  tryPutting(board, task, here);
  return false;
}
