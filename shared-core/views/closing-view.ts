import { z } from 'zod';
import { earliest } from '../calendar/local-date.ts';
import { cars } from '../fleet/car.ts';
import { sameName } from '../fleet/find-car.ts';
import { serviceItems, type ServiceItem } from '../care/service-item.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { dayOfLastWork } from '../records/close-session.ts';
import { recordedSince } from '../records/recorded-since.ts';
import { ownRecordsOf } from '../records/earlier-things.ts';
import { idSchema } from '../result/id.ts';
import { must } from '../result/assert.ts';
import { ok } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import type { Session } from '../sessions/session.ts';
import { keptSession } from '../work/begin-work.ts';
import type { Disposal } from '../work/disposal.ts';
import { followUps } from '../work/follow-up.ts';
import { secondsBetween } from '../work/instant.ts';
import { valuesOf } from '../work/read-at-step.ts';
import { ticksOf } from '../work/tick-step.ts';
import { countedSpans, vouchedUntil } from '../work/signs-of-work.ts';
import { spansOf, vouchedSeconds } from '../work/take-time.ts';
import { workedTasks } from '../work/worked-on.ts';
import { lineNote, notesOfTask, recordNote, torqueNotes, type NoteLine } from './closing-note.ts';
import { closingParts, type TakingTask, type TaskParts } from './closing-parts.ts';
import { closingSchema, type Closing, type ClosingCar, type ClosingTask } from './closing-schema.ts';
import type { Doing, DoingStep } from './doing-schema.ts';
import { doingOfSheet } from './doing-view.ts';
import type { CarJob, JobSheet } from './job-sheet-view-schema.ts';
import { showJobSheet } from './job-sheet-view.ts';
import { ownMinutes } from './own-minutes.ts';
import { said } from './plan-said.ts';

/** As many minutes as a line holds. */
const LONGEST_MINUTES = 6000;

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
    const date = dayOfLastWork(facts, session.value) ?? earliest(session.value.day, moment.today) ?? moment.today;
    const seconds = vouchedSeconds(facts, session.value.id, moment.now);
    const told = sheet.value.cars.map((job) => carOf(facts, session.value, job, doing, seconds));
    const parts = sheet.value.partsFrom === 'garage' ? new Map<string, TaskParts>() : closingParts(facts, takingTasks(told), date, moment.today);
    const done = new Set(told.flatMap((car) => car.tasks.filter(isDone).map((task) => task.key)));
    const wastes = wastesOf(sheet.value);
    return ok({
      today: moment.today,
      session: doing.session,
      date,
      cars: told.map(({ notes, ...car }, at) => ({ ...car, ...partsOf(car, parts, true), otherwise: partsOf(car, parts, false), note: recordNote([...notes, ...(at === 0 ? sharedNote(seconds.get(null) ?? 0) : [])]) })),
      ranOn: ranOnOf(facts, doing),
      sharedSeconds: seconds.get(null) ?? 0,
      wastes: wastes.filter((one) => one.tasks.some((task) => done.has(task))),
      otherwise: wastes.filter((one) => !one.tasks.some((task) => done.has(task))),
    });
  },
});

type BareCar = Omit<ClosingCar, 'lots' | 'lacks' | 'otherwise' | 'note'>;

function isDone({ outcome }: ClosingTask): boolean {
  return outcome !== null && outcome !== 'not-done';
}

function carOf(facts: Facts, session: Session, job: CarJob, doing: Doing, seconds: ReturnType<typeof vouchedSeconds>): BareCar & { readonly notes: readonly NoteLine[] } {
  const values = valuesOf(facts, session.id).filter((one) => one.car === job.car);
  const tasks = job.tasks.filter((task) => !task.done).map((task) => taskOf(facts, session.id, job.car, task, doing, seconds.get(task.key) ?? 0));
  const recorded = job.tasks.filter((task) => task.done).flatMap((task) => recordedOf(facts, session, task, seconds.get(task.key) ?? 0));
  return {
    car: job.car, carName: job.carName,
    unit: must(facts.get(cars, job.car), 'car of a session').unit,
    tasks: tasks.map((one) => one.task),
    recorded, values: [...values],
    found: doing.found.filter((one) => one.car === job.car).length,
    photos: doing.photos.filter((one) => one.car === job.car).length,
    notes: [...tasks.map((one) => ({ about: one.task.name, pieces: one.rest })), ...recorded.map(({ key, name }) => ({ about: name, pieces: torqueNotes(values.filter((one) => one.at.task === key)) }))],
  };
}

function recordedOf(facts: Facts, session: Session, { task, key, name }: CarJob['tasks'][number], seconds: number): ClosingCar['recorded'] {
  const on = recordedSince(facts, task, session);
  const minutes = Math.round(seconds / 60);
  return on === null ? [] : [{ task, key, name, on, said: said({ key: minutes < 1 ? 'closing-recorded' : 'closing-recorded-timed', values: { task: name, on, minutes } }) }];
}

function taskOf(facts: Facts, session: string, car: string, task: CarJob['tasks'][number], doing: Doing, seconds: number): { readonly task: ClosingTask; readonly rest: readonly string[] } {
  const item = task.task.kind === 'item' ? facts.get(serviceItems, task.task.id) : null;
  const steps = doing.steps.filter((step) => step.of.some((ref) => ref.task === task.key));
  const { note, rest } = lineNote(notesOfTask(task.key, steps, { values: valuesOf(facts, session), ticks: ticksOf(facts, session) }));
  const worked = workedTasks(facts, session).has(task.key);
  const open = facts.ofCar(followUps, car).filter((one) => one.doneOn === null);
  return {
    task: {
      task: task.task, key: task.key, name: task.name,
      steps: steps.length, ticked: steps.filter((step) => step.tick?.as === 'done').length, leftOut: steps.filter((step) => step.tick?.as === 'left-out').length,
      work: item?.work ?? null,
      outcome: item === null ? null : outcomeOf(item, steps, foundAt(task.key, doing), worked),
      minutes: minutesOf(seconds),
      asks: item === null ? null : asksOf(ownMinutes(item, ownRecordsOf(facts, item.car))),
      note,
      followUps: task.followUps.filter(({ text }) => !open.some((one) => sameName(one.text, text))),
    },
    rest,
  };
}

/** A press by mistake is no time, and what no record can hold was left running. */
function minutesOf(seconds: number): number | null {
  const minutes = Math.round(seconds / 60);
  return minutes < 1 || minutes > LONGEST_MINUTES ? null : minutes;
}

/** What lies further off than twice the spread of four times in five is asked about: about one time in a hundred (normal distribution). */
function asksOf(usual: ReturnType<typeof ownMinutes>): ClosingTask['asks'] {
  if (usual === null) return null;
  const { minutes: likely, low, high } = usual;
  return { likely, below: Math.floor(low ** 2 / likely), above: Math.ceil(high ** 2 / likely) };
}

/** What of the time that runs does not count: since the last sign of work, and over gaps that are longer than anybody works without one. */
function ranOnOf(facts: Facts, { session, running, now }: Doing): Closing['ranOn'] {
  const span = spansOf(facts, session.id).find((one) => one.to === null);
  if (running === null || span === undefined) return null;
  const counted = countedSpans(facts, span, vouchedUntil(facts, session.id, now), () => span.id);
  const left = secondsBetween(span.from, now) - counted.reduce((sum, { from, to }) => sum + secondsBetween(from, to ?? now), 0);
  const after = counted[0]?.to ?? null;
  return left <= 0 || after === null ? null : { name: running.name, after, minutes: Math.round(left / 60) };
}

/**
 * What its own steps say of a task; what it shares with others says nothing of it. Done is only what was done to the end; where nothing
 * was ticked as done or read, at a step that stands or one that is gone, it is not done; between them nobody but the keeper knows.
 */
function outcomeOf(item: ServiceItem, steps: readonly DoingStep[], found: boolean, worked: boolean): ClosingTask['outcome'] {
  const own = steps.filter((step) => step.timeOf !== null);
  const asked = own.length === 0 ? steps : own;
  const done = asked.filter((step) => step.tick?.as === 'done').length;
  if (own.length > 0 && done === own.length) return item.work === 'check' ? (found ? 'watch' : 'good') : 'done';
  return done === 0 && !found && !worked && asked.every((step) => step.values.length === 0) ? 'not-done' : null;
}

function foundAt(task: string, { finds }: Doing): boolean {
  return finds.some((one) => one.at?.task === task);
}

/** The tasks in the order in which they take of the shelf: over all cars what was done, then what may have been. */
function takingTasks(told: readonly BareCar[]): readonly TakingTask[] {
  const tasks = told.flatMap((car) => car.tasks).filter(({ task }) => task.kind === 'item');
  return [...tasks.filter(isDone), ...tasks.filter((task) => !isDone(task))].map(({ key, task }) => ({ key, item: task.id }));
}

/** What is taken for the tasks of a car that are proposed as done, or for the others. */
function partsOf(car: BareCar, parts: ReadonlyMap<string, TaskParts>, done: boolean): TaskParts {
  const of = car.tasks.filter((task) => isDone(task) === done).flatMap((task) => parts.get(task.key) ?? []);
  return { lots: of.flatMap((one) => one.lots), lacks: of.flatMap((one) => one.lacks) };
}

function wastesOf({ disposal }: JobSheet): Closing['wastes'] {
  return disposal.map(({ what, tasks }) => ({ what, name: say({ key: `waste-${what}`, values: {} }), kept: KEPT.includes(what), tasks: [...tasks] }));
}

/** What the steps that several tasks share took: it is no task's own time, and is not lost. */
function sharedNote(seconds: number): readonly NoteLine[] {
  const minutes = Math.round(seconds / 60);
  return minutes === 0 ? [] : [{ about: null, pieces: [say({ key: 'closing-shared-time', values: { n: minutes } })] }];
}
