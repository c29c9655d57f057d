import type { z } from 'zod';
import { earliest, type LocalDate } from '../calendar/local-date.ts';
import { findHousehold } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import type { Moment } from '../journal/operation.ts';
import { assert, must } from '../result/assert.ts';
import { ok, refuse, type Message, type Result } from '../result/result.ts';
import { checkLegalDates } from '../sessions/check-legal-dates.ts';
import { composePlanProblem } from '../sessions/compose-plan-problem.ts';
import type { HouseholdTask } from '../sessions/household-task.ts';
import { choiceFingerprint, planBasis } from '../sessions/plan-fingerprint.ts';
import { planAccount, type AccountedSession, type PlanAccount } from '../sessions/plan-account.ts';
import type { PlanAnswer } from '../sessions/plan-answer.ts';
import { planBaseline, type ChosenPlace } from '../sessions/plan-baseline.ts';
import type { PlanInstance } from '../sessions/plan-instance.ts';
import type { PlanProblem } from '../sessions/plan-problem.ts';
import { choiceFaults } from '../sessions/choice-faults.ts';
import { verifyPlan } from '../sessions/plan-verify.ts';
import { money, whyPlaced } from '../sessions/plan-why.ts';
import { whyLeft } from '../sessions/plan-why-left.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { planInput } from './plan-input.ts';
import { planNotes } from './plan-notes.ts';
import { said, type Said } from './plan-said.ts';
import { savingOf } from './plan-saving.ts';
import type { planRequestSchema, PlanSession, PlanView } from './plan-view-schema.ts';

/** Solves bare plan problems: given to the core, which knows no threads. */
export type SolvesPlans = (instance: PlanInstance) => Promise<Result<PlanAnswer>>;

/**
 * Proposes what to do together, when and where: refused before solving where a legal date cannot be kept, solved, checked by the
 * verifier and added up once more from the terms of each task. A plan that fails either check is our bug and is never shown.
 */
export async function proposePlan(facts: Facts, request: z.output<typeof planRequestSchema>, moment: Pick<Moment, 'today'>, solve: SolvesPlans): Promise<Result<PlanView>> {
  const household = findHousehold(facts);
  if (!household.ok) return household;
  const problem = checkLegalDates(composePlanProblem(planInput(facts, moment.today, request.horizonDays)));
  if (!problem.ok) return problem;
  const apart = pinnedApart(problem.value);
  if (apart !== null) return refuse(apart.key, apart.values);
  const answer = await solve(problem.value.instance);
  if (!answer.ok) return answer.refusal.code === 'plan-must-do-not-all' ? refuse('plan-legal-no-room', { date: firstLegalDate(problem.value) }) : answer;
  const faults = verifyPlan(problem.value.instance, answer.value);
  assert(faults.length === 0, `a plan that its verifier refuses: ${JSON.stringify(faults[0])}`);
  return ok(planView(problem.value, answer.value, household.value.currency));
}

/** Kept sessions that leave no everyday car: so may it come when a car turns from a hobby into an everyday one. */
function pinnedApart(problem: PlanProblem): Message | null {
  const pins = problem.input.pinned.flatMap(({ day, place, tasks }) => tasks.map((ref) => ({ task: taskKey(ref), day, place })));
  return choiceFaults(problem, planAccount(problem, pins), []).find((fault) => fault.key === 'all-cars-apart') ?? null;
}

function firstLegalDate(problem: PlanProblem): LocalDate | null {
  return earliest(...[...problem.tasks.values()].map((task) => task.legal?.lastDay ?? null));
}

/** A verified answer as the screens show it. */
export function planView(problem: PlanProblem, answer: PlanAnswer, currency: string): PlanView {
  const account = planAccount(problem, chosenOf(answer));
  assert(account.totalMinor === answer.totalMinor, `a plan that adds up to ${account.totalMinor}, not ${answer.totalMinor}`);
  const pinned = new Set(problem.input.pinned.flatMap((session) => session.tasks.map(taskKey)));
  const faults = choiceFaults(problem, account, chosenOf(answer).filter((one) => !pinned.has(one.task)));
  assert(faults.length === 0, `a plan that breaks a rule of the household: ${JSON.stringify(faults[0])}`);
  const baseline = planBaseline(problem);
  const baselineMinor = baseline === null ? null : planAccount(problem, baseline).totalMinor;
  const { openingMinor, minutesMinor, priceMinor, earlyMinor, lateMinor, leftMinor, lateDays } = account;
  return {
    today: problem.input.today,
    horizonDays: problem.input.horizonDays,
    lastDay: problem.lastDay,
    currency,
    status: answer.status,
    totalMinor: answer.totalMinor,
    boundMinor: answer.boundMinor,
    cost: { openingMinor, minutesMinor, priceMinor, earlyMinor, lateMinor, leftMinor },
    lateDays,
    baselineMinor,
    savingMinor: baselineMinor === null ? null : baselineMinor - answer.totalMinor,
    sessions: account.sessions.map((session) => sessionOf(problem, account, session, currency)),
    left: account.left.map((key) => ({ ...taskView(must(problem.tasks.get(key), 'task')), terms: { ...must(account.leftTerms.get(key), 'terms') }, why: said(whyLeft(problem, account, key, currency)) })),
    summary: summaryOf(answer, baselineMinor, problem, currency),
    notes: planNotes(problem, true).map(said),
    basis: planBasis(problem.input),
    choices: choiceFingerprint(chosenOf(answer)),
  };
}

/** The days and places of an answer, task by task. */
export function chosenOf(answer: Pick<PlanAnswer, 'sessions'>): readonly ChosenPlace[] {
  return answer.sessions.flatMap(({ day, place, tasks }) => tasks.map((task) => ({ task, day, place })));
}

function sessionOf(problem: PlanProblem, account: PlanAccount, session: AccountedSession, currency: string): PlanSession {
  const place = must(problem.instance.places.find((one) => one.id === session.place), 'place');
  const pinned = problem.input.pinned.find((one) => one.day === session.day && one.place === session.place);
  return {
    id: pinned?.id ?? null,
    day: session.day,
    place: session.place,
    placeName: must(problem.input.places.find((one) => one.place.id === session.place), 'place').place.name,
    state: pinned?.state ?? 'proposed',
    minutes: session.minutes,
    mostMinutes: place.minutesOn[session.day] ?? place.minutesADay,
    openingMinor: session.openingMinor,
    minutesMinor: session.minutesMinor,
    tasks: session.tasks.map((key) => {
      const why = whyPlaced(problem, account, key, currency);
      const terms = must(account.terms.get(key), 'terms');
      const reasons = why.reasons.map(({ about, values, worthMinor }) => ({ code: about, values: { ...values }, worthMinor }));
      return { ...taskView(must(problem.tasks.get(key), 'task')), terms: { ...terms }, why: { text: why.text, reasons } };
    }),
  };
}

/** A task as every plan shows it. */
export function taskView(task: HouseholdTask) {
  const { ref, car, carName, name, minutes, access, late, likely, legal } = task;
  return { task: ref, car, carName, name, minutes, access: [...access], late, likely, legalBy: legal?.lastDay ?? null };
}

function summaryOf(answer: PlanAnswer, baselineMinor: number | null, problem: PlanProblem, currency: string): Said[] {
  const saving = savingOf(problem, answer.totalMinor, baselineMinor, currency);
  const proven = answer.status === 'optimal' ? { key: 'plan-proven', values: {} } : { key: 'plan-best-found', values: { bound: money(answer.boundMinor, currency) } };
  return [...(answer.sessions.length === 0 ? [emptyOf(problem)] : []), ...(saving === null ? [] : [saving]), proven].map(said);
}

/** An empty plan: no day is open for what there is to do, or nothing is worth doing, as far as is known. */
function emptyOf({ input, instance, lastDay }: PlanProblem): Message {
  const dayless = instance.tasks.filter((task) => Object.values(task.costMinor).flat().every((cost) => cost === null)).length;
  if (dayless > 0) return { key: 'plan-empty-no-day', values: { last: lastDay, tasks: dayless } };
  return { key: input.unknownItems.length > 0 ? 'plan-empty-unknown' : 'plan-empty', values: { last: lastDay } };
}
