import { z } from 'zod';
import { earliest } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import { serviceItems } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { dayOfLastTick } from '../records/close-session.ts';
import { idSchema } from '../result/id.ts';
import { must } from '../result/assert.ts';
import { ok } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import type { Session } from '../sessions/session.ts';
import { keptSession } from '../work/begin-work.ts';
import { disposalsInOrder, type Disposal } from '../work/disposal.ts';
import { closingSchema, type ClosingCar, type ClosingTask } from './closing-schema.ts';
import { noteOfTask } from './closing-note.ts';
import type { Doing } from './doing-schema.ts';
import { doingOfSheet } from './doing-view.ts';
import { jobParts } from './job-parts.ts';
import type { CarJob, JobSheet } from './job-sheet-view-schema.ts';
import { showJobSheet } from './job-sheet-view.ts';
import { said } from './plan-said.ts';

/** Leavings that one keeps in a can or aside until they are taken away; the rest goes with what is collected at the door. Common practice, no source. */
const KEPT: readonly Disposal[] = ['used-oil', 'oil-filter', 'coolant', 'brake-fluid', 'fuel', 'fuel-filter', 'battery', 'old-linings', 'tyre'];

/** How a session is proposed to be closed, by what was ticked, read, timed and found. */
export const showClosing = ask({
  request: z.strictObject({ session: idSchema }),
  reply: closingSchema,
  answer: (facts, request, moment) => {
    const session = keptSession(facts, request.session);
    if (!session.ok) return session;
    const sheet = showJobSheet.answer(facts, request, moment);
    if (!sheet.ok) return sheet;
    const doing = doingOfSheet(facts, sheet.value, moment);
    const told = sheet.value.cars.map((job) => carOf(facts, job, doing));
    const done = new Set(told.flatMap((car) => car.tasks.filter(isDone).map((task) => task.key)));
    return ok({
      today: moment.today,
      session: doing.session,
      date: dayOfLastTick(facts, session.value) ?? earliest(session.value.day, moment.today) ?? moment.today,
      cars: told.map((car) => ({ ...car, ...partsOf(facts, session.value, sheet.value.partsFrom, car, moment.today) })),
      sharedSeconds: doing.sharedSeconds,
      wastes: disposalsInOrder(sheet.value.disposal.filter((one) => one.tasks.some((task) => done.has(task))).map((one) => one.what)).map((what) => ({ what, name: say({ key: `waste-${what}`, values: {} }), kept: KEPT.includes(what) })),
    });
  },
});

type BareCar = Omit<ClosingCar, 'lots' | 'lacks'>;

function isDone({ outcome }: ClosingTask): boolean {
  return outcome !== null && outcome !== 'not-done';
}

function carOf(facts: Facts, job: CarJob, doing: Doing): BareCar {
  return {
    car: job.car, carName: job.carName,
    unit: must(facts.get(cars, job.car), 'car of a session').unit,
    tasks: job.tasks.filter((task) => !task.done).map((task) => taskOf(facts, task, doing)),
    values: doing.steps.filter((step) => step.car === job.car).flatMap((step) => step.values),
    found: doing.found.filter((one) => one.car === job.car).length,
    photos: doing.photos.filter((one) => one.car === job.car).length,
  };
}

function taskOf(facts: Facts, task: CarJob['tasks'][number], doing: Doing): ClosingTask {
  const own = doing.tasks.find((one) => one.key === task.key);
  const item = task.task.kind === 'item' ? facts.get(serviceItems, task.task.id) : null;
  const [steps, ticked, seconds] = [own?.steps ?? 0, own?.ticked ?? 0, own?.seconds ?? 0];
  return {
    task: task.task, key: task.key, name: task.name, steps, ticked,
    work: item?.work ?? null,
    outcome: item === null ? null : ticked === 0 ? 'not-done' : item.work === 'check' ? (foundAt(task.key, doing) ? 'watch' : 'good') : 'done',
    minutes: seconds === 0 ? null : Math.max(1, Math.round(seconds / 60)),
    note: noteOfTask(task.key, doing.steps),
    followUps: task.followUps,
  };
}

function foundAt(task: string, { finds }: Doing): boolean {
  return finds.some((one) => one.at?.task === task);
}

/** What is taken off the shelf for what was done on a car, and what the shelf lacks of it. */
function partsOf(facts: Facts, session: Session, partsFrom: JobSheet['partsFrom'], car: BareCar, today: Doing['today']): Pick<ClosingCar, 'lots' | 'lacks'> {
  if (partsFrom === 'garage') return { lots: [], lacks: [] };
  const needs = jobParts(facts, session, car.tasks.filter(isDone).map((task) => task.task.id), today);
  return {
    lots: needs.flatMap((need) => need.taken.map(({ lot, partName, where, quantity }) => ({ lot, partName, where, unit: need.unit, quantity, for: need.itemName }))),
    lacks: needs.flatMap((need) => {
      const lacking = Math.round((need.lacking + need.coming) * 1000) / 1000;
      return lacking === 0 ? [] : [said({ key: 'closing-lacks', values: { quantity: lacking, unit: need.unit, specification: need.specificationName } })];
    }),
  };
}
