import { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import { findHousehold } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask, type Moment } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { ok, type Message } from '../result/result.ts';
import { composePlanProblem, isLegalNow } from '../sessions/compose-plan-problem.ts';
import type { HouseholdTask } from '../sessions/household-task.ts';
import { planAccount, type PlanAccount } from '../sessions/plan-account.ts';
import type { PlanProblem } from '../sessions/plan-problem.ts';
import { whyPlaced } from '../sessions/plan-why.ts';
import { whyLeft } from '../sessions/plan-why-left.ts';
import { choiceFingerprint } from '../sessions/plan-fingerprint.ts';
import { isPinned, sessions } from '../sessions/session.ts';
import { taskKey } from '../sessions/task-ref.ts';
import { begunWork } from '../work/doing.ts';
import { bookingShort } from './booking-said.ts';
import { bookingRows } from './bookings-list.ts';
import { showDoing } from './doing-view.ts';
import { planInput } from './plan-input.ts';
import { planNotes } from './plan-notes.ts';
import { said } from './plan-said.ts';
import { taskView } from './plan-view.ts';
import { sessionViews, type SessionView } from './session-view.ts';
import { lastPlanSchema, sessionsViewSchema, type SessionsView, type StandingSession, type StandingTask } from './sessions-view-schema.ts';
import { standingChoices } from './standing-choices.ts';
import { standingSummary } from './standing-summary.ts';

/** The sessions that stand, each task with its reason and cost, and what is left: added up without solving. */
export const showSessions = ask({
  request: z.strictObject({ proposed: lastPlanSchema.nullable().default(null) }),
  reply: sessionsViewSchema,
  answer: (facts, { proposed }, moment) => {
    const { today } = moment;
    const household = findHousehold(facts);
    if (!household.ok) return household;
    const { currency } = household.value;
    const all = planInput(facts, today, null);
    const chosen = standingChoices(facts, all);
    const problem = composePlanProblem({ ...all, asked: chosen.map((one) => one.task) });
    const account = planAccount(problem, chosen);
    const isThePlan = proposed !== null && proposed.totalMinor === account.totalMinor && proposed.choices === choiceFingerprint(chosen);
    const summary = chosen.length === 0 ? [] : standingSummary({ problem, account, proposed, isThePlan, currency });
    return ok({
      today,
      horizonDays: problem.input.horizonDays,
      lastDay: problem.lastDay,
      currency,
      places: problem.input.places.map(({ place: { id, name, kind }, assumed }) => ({ id, name, kind, assumed })),
      sessions: standingSessions(facts, { problem, account, currency }, moment),
      bookings: bookingRows(facts),
      left: leftTasks(problem, account, isThePlan, currency),
      totalMinor: account.totalMinor,
      summary: summary.map(said),
      notes: planNotes(problem, summary.some((one) => SAVINGS.has(one.key))).map(said),
    });
  },
});

function shortOf(facts: Facts, { id }: SessionView, today: LocalDate): StandingSession['booking'] {
  const session = facts.get(sessions, id);
  return session === null ? null : bookingShort(facts, session, today);
}

/** What of the work on it is done; null where it has not begun. */
function begunOf(facts: Facts, { id }: SessionView, moment: Moment): StandingSession['begun'] {
  if (facts.get(begunWork, id) === null) return null;
  const doing = showDoing.answer(facts, { session: id }, moment);
  return doing.ok ? { ticked: doing.value.steps.filter((step) => step.tick !== null).length, steps: doing.value.steps.length } : null;
}

interface Planned {
  readonly problem: PlanProblem;
  readonly account: PlanAccount;
  readonly currency: string;
}

function standingSessions(facts: Facts, { problem, account, currency }: Planned, moment: Moment): StandingSession[] {
  const views = keptFirst(sessionViews(facts, problem.input.today));
  return views.map((view) => {
    const kept = views.find((one) => one.id !== view.id && one.day === view.day && one.place === view.place && isPinned(one) && !isPinned(view));
    const held = account.sessions.find((one) => one.day === view.day && one.place === view.place);
    return {
      ...view,
      tasks: view.tasks.map((task) => standingTask(problem, account, view, task, currency)),
      dayMinutes: held?.minutes ?? view.minutes,
      mostMinutes: mostMinutes(problem, view),
      openingMinor: kept === undefined ? (held?.openingMinor ?? 0) : 0,
      minutesMinor: kept === undefined ? (held?.minutesMinor ?? 0) : 0,
      joins: kept?.id ?? null,
      begun: begunOf(facts, view, moment),
      booking: shortOf(facts, view, problem.input.today),
    };
  });
}

/** Of one day and place what is kept stands before what is proposed to join it. */
function keptFirst(views: readonly SessionView[]): readonly SessionView[] {
  const rank = (one: SessionView) => (isPinned(one) ? 0 : 1);
  return [...views].sort((a, b) => (a.day === b.day && a.place === b.place ? rank(a) - rank(b) : 0));
}

function mostMinutes({ instance }: PlanProblem, { day, place }: SessionView): number {
  const found = instance.places.find((one) => one.id === place);
  return found === undefined ? 0 : (found.minutesOn[day] ?? found.minutesADay);
}

function standingTask(problem: PlanProblem, account: PlanAccount, { passed }: SessionView, task: SessionView['tasks'][number], currency: string): StandingTask {
  const key = taskKey(task.task);
  const known = problem.tasks.get(key);
  const terms = account.terms.get(key);
  if (known === undefined || terms === undefined || task.done || passed) return { ...task, planned: null };
  const why = whyPlaced(problem, account, key, currency);
  const { minutes, access, late, likely, legalBy } = taskView(known);
  const reasons = why.reasons.map(({ about, values, worthMinor }) => ({ code: about, values: { ...values }, worthMinor }));
  return { ...task, planned: { minutes, access, late, likely, legalBy, terms: { ...terms }, why: { text: why.text, reasons } } };
}

/** Where the sessions that stand are held against each task by itself. */
const SAVINGS: ReadonlySet<string> = new Set(['plan-saves', 'plan-saves-nothing', 'plan-saves-nothing-kept', 'stand-dearer']);

function unplannedOf({ lastDay }: PlanProblem, task: HouseholdTask, why: Message): Message {
  if (task.legal === null || task.late || !isLegalNow(task, lastDay)) return { ...why, key: 'left-unplanned' };
  return { key: 'left-unplanned-legal', values: { date: task.legal.lastDay } };
}

/**
 * That the days are full is known of a plan alone; of sessions that were put together by hand it is said that something is worth doing. What
 * stands in a session whose day has passed waits for a word of how that went.
 */
function leftTasks(problem: PlanProblem, account: PlanAccount, isThePlan: boolean, currency: string): SessionsView['left'] {
  return account.left.map((key) => {
    const why = whyLeft(problem, account, key, currency);
    const passed = problem.input.passed.find((one) => one.tasks.some((task) => taskKey(task) === key));
    const task = must(problem.tasks.get(key), 'task');
    const unplanned = passed === undefined ? unplannedOf(problem, task, why) : { key: 'left-passed', values: { ...why.values, day: passed.day } };
    return {
      ...taskView(task),
      terms: { ...must(account.leftTerms.get(key), 'terms') },
      why: said(why.key === 'left-no-room' && (!isThePlan || passed !== undefined) ? unplanned : why),
    };
  });
}
