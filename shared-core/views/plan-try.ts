import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { findHousehold } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { say, sayOf } from '../result/words/say.ts';
import { choiceFaults } from '../sessions/choice-faults.ts';
import { checkBoard, checkPin } from '../sessions/check-board.ts';
import { composePlanProblem } from '../sessions/compose-plan-problem.ts';
import { planAccount, type PlanAccount } from '../sessions/plan-account.ts';
import type { ChosenPlace } from '../sessions/plan-baseline.ts';
import type { PlanInput, PlanProblem } from '../sessions/plan-problem.ts';
import { horizonSchema } from '../sessions/plan-settings.ts';
import { money } from '../sessions/plan-why.ts';
import { standingPlaces } from '../sessions/place.ts';
import { putIn, standingBoard, takeOut } from '../sessions/session-board.ts';
import type { Session } from '../sessions/session.ts';
import { taskKey, taskRefSchema, type TaskRef } from '../sessions/task-ref.ts';
import { planInput } from './plan-input.ts';
import { said, saidSchema, type Said } from './plan-said.ts';
import { standingChoices } from './standing-choices.ts';

const placedSchema = z.strictObject({ day: dateSchema, place: idSchema, tasks: z.array(taskRefSchema).min(1).max(100) });
const requestSchema = z.strictObject({
  /** What is moved: a whole session's tasks, or some of them. */
  tasks: z.array(taskRefSchema).min(1).max(100),
  /** Where to; null: left undone. */
  to: z.strictObject({ day: dateSchema, place: idSchema }).nullable(),
  /** The plan they are moved in; null: the sessions that stand, proposed and kept. */
  plan: z.array(placedSchema).max(400).nullable().default(null),
  horizonDays: horizonSchema.nullable().default(null),
});
type TryRequest = z.output<typeof requestSchema>;

const sideSchema = z.object({ totalMinor: z.int(), lateDays: z.number() });

/** What moving tasks would change, added up without solving. */
export const tryPlan = ask({
  request: requestSchema,
  reply: z.object({
    currency: z.string(),
    /** No rule is broken; otherwise `faults` says which. A day off one's own habit may still be kept. */
    allowed: z.boolean(),
    faults: z.array(saidSchema),
    /** Why it could not be kept there at all; null where it could, if need be against `faults`. */
    refusal: saidSchema.nullable(),
    before: sideSchema,
    after: sideSchema,
    deltaMinor: z.int(),
    /** Expected days late that it adds, over all that is moved. */
    deltaLateDays: z.number(),
    /** Each moved task before and after. */
    tasks: z.array(z.object({ task: taskRefSchema, name: z.string(), before: sideSchema, after: sideSchema })),
    text: z.string(),
  }),
  answer: (facts, request, moment) => {
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const tried = tryMove(facts, request, moment.today);
    if (!tried.ok) return tried;
    const { problem, before, after, moved } = tried.value;
    const faults = choiceFaults(problem, after, moved);
    const { currency } = household.value;
    const [deltaMinor, deltaLateDays] = [after.totalMinor - before.totalMinor, after.lateDays - before.lateDays];
    return ok({
      currency,
      allowed: faults.length === 0,
      faults: faults.map(said),
      refusal: request.to === null ? null : whyNotKept(facts, request.tasks, request.to, moment.today),
      before: { totalMinor: before.totalMinor, lateDays: before.lateDays },
      after: { totalMinor: after.totalMinor, lateDays: after.lateDays },
      deltaMinor,
      deltaLateDays,
      tasks: request.tasks.map((task) => ({ task, name: must(problem.tasks.get(taskKey(task)), 'task').name, before: sideOf(before, taskKey(task)), after: sideOf(after, taskKey(task)) })),
      text: textOf(deltaMinor, deltaLateDays, currency),
    });
  },
});

interface TriedMove {
  readonly problem: PlanProblem;
  readonly before: PlanAccount;
  readonly after: PlanAccount;
  readonly moved: readonly ChosenPlace[];
}

function tryMove(facts: Facts, request: TryRequest, today: LocalDate): Result<TriedMove> {
  const { to } = request;
  const all = planInput(facts, today, request.horizonDays, request.tasks);
  const given = request.plan?.flatMap(placesOf) ?? [];
  const known = checkKnown(all, [...request.tasks.map(taskKey), ...given.map((one) => one.task)], to?.place ?? null);
  if (!known.ok) return known;
  const base = request.plan === null ? standingChoices(facts, all) : given;
  const problem = composePlanProblem({ ...all, asked: [...request.tasks.map(taskKey), ...base.map((one) => one.task)] });
  const keys = new Set(request.tasks.map(taskKey));
  const moved = to === null ? [] : [...keys].map((task) => ({ task, day: to.day, place: to.place }));
  // What is pinned stands where it stands, whatever the plan given says.
  const pinned = all.pinned.flatMap(placesOf);
  const rest = [...base.filter((one) => !pinned.some((other) => other.task === one.task)), ...pinned];
  return ok({ problem, moved, before: planAccount(problem, rest), after: planAccount(problem, [...rest.filter((one) => !keys.has(one.task)), ...moved]) });
}

/** What keeping the tasks there would answer, were it asked now. */
function whyNotKept(facts: Facts, tasks: readonly TaskRef[], to: NonNullable<TryRequest['to']>, today: LocalDate): Said | null {
  const place = standingPlaces(facts).find((one) => one.place.id === to.place)?.place;
  if (place === undefined) return null;
  const pin = checkPin(facts, { day: to.day, place, tasks }, today);
  const moved: Session = { id: '', day: to.day, place: to.place, tasks: [...tasks], state: 'moved', movedFrom: null, madeOn: today, note: '' };
  const before = standingBoard(facts, today);
  const sound = pin.ok ? checkBoard(facts, putIn(takeOut(before, tasks, () => true), moved).board, before) : pin;
  return sound.ok ? null : said({ key: sound.refusal.code, values: sound.refusal.values });
}

function checkKnown(input: PlanInput, keys: readonly string[], place: string | null): Result<null> {
  const tasks = new Set(input.tasks.map((task) => task.key));
  const strange = keys.find((key) => !tasks.has(key));
  if (strange !== undefined) return refuse('unknown-task', { task: strange }, ['tasks']);
  if (place !== null && !input.places.some((one) => one.place.id === place)) return refuse('unknown-place', { place }, ['to']);
  return ok(null);
}

function placesOf({ day, place, tasks }: { readonly day: LocalDate; readonly place: string; readonly tasks: readonly TaskRef[] }): readonly ChosenPlace[] {
  return tasks.map((task) => ({ task: taskKey(task), day, place }));
}

function sideOf(account: PlanAccount, key: string): z.infer<typeof sideSchema> {
  const side = account.terms.get(key) ?? must(account.leftTerms.get(key), 'terms of a task');
  return { totalMinor: side.totalMinor, lateDays: side.lateDays };
}

function textOf(deltaMinor: number, deltaLateDays: number, currency: string): string {
  const cost = say({ key: deltaMinor > 0 ? 'try-dearer' : deltaMinor < 0 ? 'try-cheaper' : 'try-same', values: { amount: money(Math.abs(deltaMinor), currency) } });
  const days = Math.round(Math.abs(deltaLateDays));
  const late = days === 0 ? '' : `, ${say({ key: deltaLateDays > 0 ? 'try-later' : 'try-sooner', values: { days: sayOf('counted-days', { n: days }) } })}`;
  return `${cost}${late}.`;
}
