import { z } from 'zod';
import type { Facts } from '../journal/facts.ts';
import { ask, type Moment } from '../journal/operation.ts';
import { observations } from '../records/observation.ts';
import { recordedSince } from '../records/recorded-since.ts';
import { must } from '../result/assert.ts';
import { idSchema } from '../result/id.ts';
import { ok } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { sessions, type Session } from '../sessions/session.ts';
import type { TaskRef } from '../sessions/task-ref.ts';
import { begunWork, finds } from '../work/doing.ts';
import { secondsBetween } from '../work/instant.ts';
import { valuesOf } from '../work/read-at-step.ts';
import { wholeOf } from '../work/part-of-work.ts';
import { unreadCautions } from '../work/session-cautions.ts';
import { photosOf } from '../work/take-photo.ts';
import { lastSign, LEFT_ALONE_SECONDS } from '../work/signs-of-work.ts';
import { secondsUntil, spansOf } from '../work/take-time.ts';
import { ticksOf } from '../work/tick-step.ts';
import { doingSchema, type Doing } from './doing-schema.ts';
import { doingSteps } from './doing-steps.ts';
import { cautionView } from './job-cautions.ts';
import type { JobSheet } from './job-sheet-view-schema.ts';
import { showJobSheet } from './job-sheet-view.ts';

/** A session as it is worked: one thing after another, with what was ticked, read and found so far. */
export const showDoing = ask({
  request: z.strictObject({ session: idSchema }),
  reply: doingSchema,
  answer: (facts, request, moment) => {
    const sheet = showJobSheet.answer(facts, request, moment);
    return sheet.ok ? ok(doingOfSheet(facts, sheet.value, moment)) : sheet;
  },
});

/** A session as it is worked, by its job sheet. */
export function doingOfSheet(facts: Facts, sheet: JobSheet, { today, now }: Moment): Doing {
  const { id } = sheet.session;
  const taken = spansOf(facts, id);
  const seconds = secondsUntil(facts, id, now);
  const steps = doingSteps(sheet.cars, ticksOf(facts, id), valuesOf(facts, id));
  const tasks = sheet.cars.flatMap((job) => job.tasks.filter((task) => !task.done).map((task) => ({ job, task })));
  const named = sheet.cars.flatMap((job) => job.tasks);
  const found = facts.all(finds).filter((one) => one.session === id);
  const sign = lastSign(facts, id);
  const session = must(facts.get(sessions, id), 'the session of a job sheet');
  const here = wholeOf(facts, id);
  const running = taken.find((span) => span.to === null && here.task(span.task));
  return {
    today, now,
    session: sheet.session,
    begunAt: facts.get(begunWork, id)?.at ?? null,
    cautions: sheet.cautions,
    unread: unreadCautions(facts, session).map((one) => ({ ...cautionView(one), key: one.caution })),
    steps,
    tasks: tasks.map(({ job, task }) => {
      const own = steps.filter((step) => step.of.some((ref) => ref.task === task.key));
      return { key: task.key, name: task.name, car: job.car, carName: job.carName, steps: own.length, ticked: own.filter((step) => step.tick !== null).length, seconds: seconds.get(task.key) ?? 0, likelyMinutes: task.minutes };
    }),
    spent: spentOf(facts, session, sheet, seconds),
    sharedSeconds: seconds.get(null) ?? 0,
    running: running === undefined ? null : { task: running.task, name: named.find((task) => task.key === running.task)?.name ?? say({ key: 'doing-shared', values: {} }), from: running.from },
    lastSign: sign,
    leftRunning: running !== undefined && sign !== null && secondsBetween(sign, now) > LEFT_ALONE_SECONDS,
    found: found.flatMap((one) => facts.get(observations, one.id) ?? []),
    finds: found,
    photos: [...photosOf(facts, id)],
  };
}

/** An ended session's own record may be of a day before it was planned: it counts by the day on which it was closed. */
function spentOf(facts: Facts, session: Session, sheet: JobSheet, seconds: ReadonlyMap<string | null, number>): Doing['spent'] {
  const isDone = (task: TaskRef) => session.state === 'done' && recordedSince(facts, task, { madeOn: session.day }) !== null;
  const all = sheet.cars.flatMap((job) => job.tasks.map(({ key, task, name, done }) => ({ key, name, carName: job.carName, minutes: Math.round((seconds.get(key) ?? 0) / 60), done: done || isDone(task) })));
  return all.filter((one) => one.minutes > 0);
}
