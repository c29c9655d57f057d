import { must } from '../result/assert.ts';
import type { PlanAnswer, PlannedSession } from './plan-answer.ts';
import { tasksOn, type Board } from './plan-board.ts';
import { LEFT } from './plan-facts.ts';
import type { Quest } from './plan-quest.ts';

/** The answer that a board gives, with what was proved of it: days in the order of the calendar, tasks and places in that of the instance. */
export function composePlan(quest: Quest, board: Board): PlanAnswer {
  const { instance, slots } = board.facts;
  const held = [...slots.keys()].filter((slot) => (board.held[slot] ?? 0) > 0);
  const sessions = held.map((slot): PlannedSession & { at: number } => {
    const { day, place } = must(slots[slot], 'slot');
    const tasks = tasksOn(board, slot).map((task) => must(instance.tasks[task], 'task').id);
    return { day: must(instance.days[day], 'day'), place: must(instance.places[place], 'place').id, tasks, minutes: board.minutes[slot] ?? 0, at: place };
  });
  return {
    status: quest.provedMinor >= board.totalMinor ? 'optimal' : 'stopped',
    totalMinor: board.totalMinor,
    boundMinor: Math.min(quest.provedMinor, board.totalMinor),
    sessions: sessions.sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.at - b.at)).map(({ at: _at, ...session }) => session),
    left: tasksOn(board, LEFT).map((task) => must(instance.tasks[task], 'task').id),
  };
}
