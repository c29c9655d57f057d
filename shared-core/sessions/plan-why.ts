import { must } from '../result/assert.ts';
import type { Message } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { amountText } from '../units/money.ts';
import { isLegalNow } from './compose-plan-problem.ts';
import type { HouseholdTask } from './household-task.ts';
import type { AccountedSession, PlanAccount } from './plan-account.ts';
import type { PlanTask } from './plan-instance.ts';
import type { PlanProblem } from './plan-problem.ts';
import { taskKey } from './task-ref.ts';

/** Why a task stands where it stands: the reasons in their order, and the first of them, with one more, as a sentence. */
export interface PlanWhy {
  readonly reasons: readonly PlanReason[];
  readonly text: string;
}

/** A reason by the ending of its key (`why-` where it leads, `and-` where it follows), with what it is worth in minor units: null where no money outweighs it. */
export interface PlanReason {
  readonly about: string;
  readonly values: Message['values'];
  readonly worthMinor: number | null;
}

/** What a reason is made from. */
interface Placed {
  readonly problem: PlanProblem;
  readonly account: PlanAccount;
  readonly task: HouseholdTask;
  readonly session: AccountedSession;
  readonly currency: string;
}

/**
 * Why a task of a plan stands where it stands, from the real terms of its cost: kept by the keeper, a legal date, what waiting past the
 * horizon would count, an opening or an access it shares; those that are worth most first. That this is the cheaper place comes after
 * them, for it says nothing of the day.
 */
export function whyPlaced(problem: PlanProblem, account: PlanAccount, key: string, currency: string): PlanWhy {
  const session = must(account.sessions.find((one) => one.tasks.includes(key)), 'session of a task');
  const placed: Placed = { problem, account, task: must(problem.tasks.get(key), 'task'), session, currency };
  const ofTheDay = [keptReason(placed), legalReason(placed), waitingReason(placed), openingReason(placed), accessReason(placed)].flatMap((one) => one ?? []);
  const reasons = [...ofTheDay.sort((a, b) => rankOf(b) - rankOf(a)), ...[cheaperReason(placed)].flatMap((one) => one ?? [])];
  const [main = FREE, more = null] = reasons;
  return { reasons, text: sentenceOf(main, more) };
}

/** What no money outweighs comes first, in the order in which it was found. */
function rankOf({ worthMinor }: PlanReason): number {
  return worthMinor ?? Number.MAX_SAFE_INTEGER;
}

const FREE: PlanReason = { about: 'free', values: {}, worthMinor: 0 };

function sentenceOf(main: PlanReason, more: PlanReason | null): string {
  const first = say({ key: `why-${main.about}`, values: main.values });
  const second = more === null ? '' : `, ${say({ key: `and-${more.about}`, values: more.values })}`;
  // A place may be called by a name that begins small.
  return `${first.slice(0, 1).toUpperCase()}${first.slice(1)}${second}.`;
}

function keptReason({ problem, account, session, task, currency }: Placed): PlanReason | null {
  const pin = problem.input.pinned.find((one) => one.tasks.some((ref) => taskKey(ref) === task.key));
  if (pin === undefined) return null;
  const lateMinor = account.terms.get(task.key)?.lateMinor ?? 0;
  return { about: lateMinor > 0 ? 'kept-late' : 'kept', values: { day: session.day, amount: money(lateMinor, currency) }, worthMinor: null };
}

function legalReason({ problem, session, task }: Placed): PlanReason | null {
  const { legal } = task;
  if (legal === null || !isLegalNow(task, problem.lastDay)) return null;
  if (task.late) return { about: 'legal-late', values: { date: legal.lastDay }, worthMinor: null };
  const keeps = legal.opens !== null && session.day >= legal.opens;
  return { about: keeps ? 'legal-keeps' : 'legal', values: { date: legal.lastDay, opens: legal.opens }, worthMinor: null };
}

/** What must be done by law is not weighed against leaving it. */
function waitingReason({ problem, account, task, currency }: Placed): PlanReason | null {
  if (isLegalNow(task, problem.lastDay)) return null;
  const now = account.terms.get(task.key)?.lateMinor ?? 0;
  const worthMinor = (problem.left.get(task.key)?.lateMinor ?? 0) - now;
  if (worthMinor <= 0) return null;
  const values = { last: problem.lastDay, amount: money(worthMinor, currency), day: money(task.lateMinorADay, currency) };
  return { about: task.late ? 'late' : 'waiting', values, worthMinor };
}

function openingReason({ problem, task, session, currency }: Placed): PlanReason | null {
  const others = session.tasks.filter((key) => key !== task.key);
  if (others.length === 0 || session.openingMinor === 0) return null;
  return { about: 'opening', values: { others: namesOf(problem, others, task), amount: money(session.openingMinor, currency) }, worthMinor: session.openingMinor };
}

/** Minutes at home cost nothing, but they are the keeper's: worth naming, after all that costs money. */
function accessReason({ problem, task, session, currency }: Placed): PlanReason | null {
  const { instance } = problem;
  const own = must(instance.tasks.find((one) => one.id === task.key), 'task of the instance');
  const shares = (one: PlanTask | undefined, id: string) => one !== undefined && one.id !== own.id && one.car === own.car && one.access.includes(id);
  const shared = instance.access.filter((group) => group.car === own.car && own.access.includes(group.id) && group.minutes > 0 && session.tasks.some((key) => shares(instance.tasks.find((one) => one.id === key), group.id)));
  const [most] = [...shared].sort((a, b) => b.minutes - a.minutes);
  if (most === undefined) return null;
  const others = session.tasks.filter((key) => shares(instance.tasks.find((one) => one.id === key), most.id));
  const worthMinor = most.minutes * must(instance.places.find((one) => one.id === session.place), 'place').minuteMinor;
  const access = problem.input.accessGroups.find((group) => group.id === most.id)?.name ?? most.id;
  return { about: worthMinor > 0 ? 'access-paid' : 'access', values: { access, others: namesOf(problem, others, task), minutes: most.minutes, amount: money(worthMinor, currency) }, worthMinor };
}

function cheaperReason({ problem, task, session, currency }: Placed): PlanReason | null {
  const here = task.prices.get(session.place);
  const worthMinor = here === undefined ? 0 : Math.max(...task.prices.values()) - here;
  const place = problem.input.places.find((one) => one.place.id === session.place)?.place.name ?? session.place;
  return worthMinor > 0 ? { about: 'cheaper', values: { place, amount: money(worthMinor, currency) }, worthMinor } : null;
}

/** Two names at most, those of other cars with the car. @example 'oil, Alder: pads and 2 more' */
function namesOf(problem: PlanProblem, keys: readonly string[], beside: HouseholdTask): string {
  const names = keys.map((key) => must(problem.tasks.get(key), 'task')).map((task) => (task.car === beside.car ? task.name : `${task.carName}: ${task.name}`));
  const [first = '', second, ...rest] = names;
  if (second === undefined) return first;
  return rest.length === 0 ? `${first} and ${second}` : `${first}, ${second} and ${rest.length} more`;
}

/** An amount with its currency, as a sentence has it. @example money(1500, 'GBP') //=> '15.00 GBP' */
export function money(minor: number, currency: string): string {
  return `${amountText(minor, currency)} ${currency}`;
}
