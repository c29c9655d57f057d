import { measurements } from '../care/measurement.ts';
import type { ServiceItem } from '../care/service-item.ts';
import { servicePlans } from '../care/service-plan.ts';
import type { NewEntry } from '../journal/entry-kind.ts';
import type { Facts } from '../journal/facts.ts';
import { orders } from '../parts/order.ts';
import { taskTools } from '../parts/tool.ts';
import { intakeAnswers } from '../records/intake-answer.ts';
import { workInHand } from '../records/work-in-hand.ts';
import { workRecords } from '../records/work-record.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { boardEntries, takeOut } from '../sessions/session-board.ts';
import { isPinned, sessions, type Session } from '../sessions/session.ts';
import { taskKey, type TaskRef } from '../sessions/task-ref.ts';
import { worthWhiles } from '../sessions/worth-while.ts';
import { bookings } from '../work/booking.ts';
import { followUps } from '../work/follow-up.ts';
import { taskSheets } from '../work/task-sheet.ts';

/** The entries that take a wish's item out of the sessions that stand; refused, with what it is, where anything else hangs on the item. */
export function unplanned(facts: Facts, item: ServiceItem, now: string): Result<readonly NewEntry[]> {
  const task: TaskRef = { kind: 'item', id: item.id };
  const holding = facts.all(sessions).filter((one) => one.tasks.some((other) => taskKey(other) === taskKey(task)));
  const hanging = hangsOn(facts, item, holding, now);
  if (hanging !== null) return refuse('wish-task-used', { wish: item.name, what: say({ key: `wish-hangs-${hanging}`, values: {} }) }, ['wish']);
  const board = new Map(holding.filter((one) => one.state === 'proposed' || isPinned(one)).map((one) => [one.id, one]));
  return ok(boardEntries(board, takeOut(board, [task], () => true)));
}

function hangsOn(facts: Facts, { id, car }: ServiceItem, holding: readonly Session[], now: string): string | null {
  const key = taskKey({ kind: 'item', id });
  const isIt = (one: { readonly item: string | null }) => one.item === id;
  const asked = facts.all(bookings).some((one) => [one, ...(one.earlier ?? [])].some((round) => round.wanted.some(({ task }) => task !== null && taskKey(task) === key)));
  const found = {
    record: facts.ofCar(workRecords, car).some((record) => record.lines.some(isIt) || record.costs.some((line) => line.item === id)),
    done: holding.some((one) => one.state === 'done'),
    work: holding.some((one) => workInHand(facts, one.id, { task: (task) => task === key, car: () => false }, now) !== null),
    garage: asked || holding.some((one) => isPinned(one) && one.tasks.length === 1 && facts.get(bookings, one.id) !== null),
    sheet: facts.get(taskSheets, id) !== null,
    tools: (facts.get(taskTools, id)?.tools ?? []).length > 0,
    pair: facts.all(worthWhiles).some((pair) => [pair.when, pair.also].some((one) => taskKey(one) === key)),
    order: facts.all(orders).some((order) => order.lines.some((line) => line.for.some(isIt))),
    service: facts.all(servicePlans).some((plan) => plan.lines.some(isIt)),
    answer: facts.ofCar(intakeAnswers, car).some(isIt),
    measured: facts.ofCar(measurements, car).some(isIt),
    'follow-up': facts.ofCar(followUps, car).some(isIt),
  };
  return Object.entries(found).find(([, hangs]) => hangs)?.[0] ?? null;
}
