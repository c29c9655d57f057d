import { z } from 'zod';
import { serviceItems } from '../care/service-item.ts';
import { cars } from '../fleet/car.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { rememberedFacts } from '../journal/remembered-facts.ts';
import { taskTools, tools } from '../parts/tool.ts';
import { ownRecordsOf } from '../records/earlier-things.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse } from '../result/result.ts';
import { sessions } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { joinTools, type JobTool } from '../work/join-tools.ts';
import { sheetFor } from '../work/starting-sheet.ts';
import { taskSheets } from '../work/task-sheet.ts';
import { jobCautions, jobDisposal, type CarTasks } from './job-cautions.ts';
import { jobOfCar, type CarTask } from './job-of-car.ts';
import { jobParts } from './job-parts.ts';
import { jobSheetSchema, sheetViewSchema, type JobSheet } from './job-sheet-view-schema.ts';
import { ownMinutes } from './own-minutes.ts';
import { sessionView, type SessionView } from './session-view.ts';

/** The job sheet of a session: all that it needs in hand, car by car and in order of work. */
export const showJobSheet = ask({
  request: z.strictObject({ session: idSchema }),
  reply: jobSheetSchema,
  answer: (standing, request, { today }) => {
    const facts = rememberedFacts(standing);
    const session = facts.get(sessions, request.session);
    if (session === null) return refuse('unknown-session', { session: request.session }, ['session']);
    const view = sessionView(facts, session, today);
    const grouped = groupedByCar(facts, view);
    const { id, day, place, placeName, placeKind, state, note, passed } = view;
    const work = grouped.map(({ car, tasks }) => jobOfCar(facts, car, tasks));
    const inOrder = work.flatMap((one) => one.tasks).filter((one) => !one.done && one.task.kind === 'item');
    return ok({
      today,
      session: { id, day, place, placeName, placeKind, state, note, passed },
      minutes: view.minutes,
      withoutMinutes: view.withoutMinutes,
      cautions: jobCautions(grouped),
      tools: toolsOf(facts, grouped, day),
      partsFrom: placeKind,
      parts: placeKind === 'garage' ? [] : jobParts(facts, session, inOrder.map((one) => one.task.id), today),
      cars: work,
      disposal: jobDisposal(grouped),
    });
  },
});

/** The sheet of one service item alone, as it would be worked. */
export const showSheet = ask({
  request: z.strictObject({ item: idSchema }),
  reply: sheetViewSchema,
  answer: (facts, request, { today }) => {
    const item = facts.get(serviceItems, request.item);
    const car = item === null ? null : facts.get(cars, item.car);
    if (item === null || car === null) return refuse('unknown-item', { item: request.item }, ['item']);
    const task = carTask(facts, { task: { kind: 'item', id: item.id }, car: item.car, carName: car.name, name: item.name, done: false });
    const grouped = [{ car, tasks: [task] }];
    return ok({
      item: item.id, itemName: item.name, car: car.id, carName: car.name,
      hasSheet: task.sheet !== null,
      startedFrom: task.sheet?.startedFrom ?? null,
      suggested: sheetFor(item.name, car)?.key ?? null,
      cautions: jobCautions(grouped),
      tools: toolsOf(facts, grouped, today),
      job: jobOfCar(facts, car, [task]),
      disposal: jobDisposal(grouped),
    });
  },
});

function groupedByCar(facts: Facts, view: SessionView): readonly CarTasks[] {
  const named = view.cars.flatMap((id) => facts.get(cars, id) ?? []).sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.id < b.id ? -1 : 1));
  return named.map((car) => ({ car, tasks: view.tasks.filter((one) => one.car === car.id).map((one) => carTask(facts, one)) }));
}

function carTask(facts: Facts, { task, name, done }: SessionView['tasks'][number]): CarTask {
  const item = task.kind === 'item' ? facts.get(serviceItems, task.id) : null;
  return { ref: task, key: taskKey(task), name, done, minutes: item === null ? null : (ownMinutes(item, ownRecordsOf(facts, item.car))?.minutes ?? null), access: item?.access ?? [], sheet: item === null ? null : facts.get(taskSheets, item.id) };
}

/** The tools of the steps, and those that the household says a task takes. */
function toolsOf(facts: Facts, grouped: readonly CarTasks[], day: LocalDate): JobSheet['tools'] {
  const open = grouped.flatMap(({ tasks }) => tasks).filter((task) => !task.done && task.ref.kind === 'item');
  const wanted = open.flatMap(({ key, ref, sheet }) => {
    const stated = (facts.get(taskTools, ref.id)?.tools ?? []).flatMap((id) => facts.get(tools, id)?.name ?? []);
    return [...stated, ...(sheet?.steps.flatMap((step) => step.tools) ?? [])].map((name) => ({ name, task: key }));
  });
  return joinTools(wanted, facts.all(tools), day).map(toolView);
}

function toolView({ name, tool, lacking, tasks }: JobTool): JobSheet['tools'][number] {
  return { name, tool: tool?.id ?? null, state: tool?.state ?? 'not-listed', where: tool?.where ?? null, lender: tool?.lender ?? null, until: tool?.until ?? null, lacking, tasks: [...tasks] };
}
