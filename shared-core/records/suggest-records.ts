import { daysBetween, type LocalDate } from '../calendar/local-date.ts';
import type { Message } from '../result/result.ts';
import type { AmountInText } from './text-amounts.ts';
import type { DateInText } from './text-dates.ts';
import { namesIt, namesRegistration } from './names-in-text.ts';

/** What a paper tells by itself. */
export interface PaperTells {
  readonly dates: readonly DateInText[];
  readonly amounts: readonly AmountInText[];
  /** The day it was taken, or the day the keeper gave it. */
  readonly day: LocalDate | null;
  /** Its text as `plainWords` gives it. */
  readonly words: string;
}

/** Something that a paper may belong to. */
export interface PaperTarget {
  readonly kind: 'record' | 'observation';
  readonly id: string;
  readonly date: LocalDate;
  readonly placeName: string | null;
  /** The total as printed and the sum of the costs, where there are any. */
  readonly sums: readonly number[];
  readonly hasPaper: boolean;
  readonly carName: string;
  readonly registration: string | null;
}

/** One thing that a paper may belong to, with why, strongest reason first. */
export interface Suggestion {
  readonly target: PaperTarget;
  readonly score: number;
  readonly reasons: readonly Message[];
}

/** Less than this is no reason to name it. Weights are our own rule: a printed sum says most, then the day, then the names. */
const LEAST = 25;
const MOST = 5;

/** What a paper may belong to, best first. Pure and in the time of targets times dates. */
export function suggestTargets(paper: PaperTells, targets: readonly PaperTarget[]): readonly Suggestion[] {
  const scored = targets.flatMap((target) => scoredTarget(paper, target) ?? []);
  return scored.sort((a, b) => b.score - a.score || (a.target.date < b.target.date ? 1 : a.target.date > b.target.date ? -1 : a.target.id < b.target.id ? -1 : 1)).slice(0, MOST);
}

/** Whether the first of the suggestions stands out from the others. */
export function isClear([first, second]: readonly Suggestion[]): boolean {
  return first !== undefined && first.score >= 50 && first.score - (second?.score ?? 0) >= 15;
}

interface Reason {
  readonly score: number;
  readonly message: Message;
}

function scoredTarget(paper: PaperTells, target: PaperTarget): Suggestion | null {
  const reasons = [amountReason(paper, target), dayReason(paper, target), placeReason(paper, target), carReason(paper, target)].flatMap((reason) => reason ?? []);
  const score = reasons.reduce((sum, one) => sum + one.score, 0);
  if (score < LEAST) return null;
  const bare: Reason[] = target.hasPaper ? [] : [{ score: 5, message: { key: 'suggest-no-paper', values: {} } }];
  const sorted = [...reasons.sort((a, b) => b.score - a.score), ...bare];
  return { target, score: sorted.reduce((sum, one) => sum + one.score, 0), reasons: sorted.map((one) => one.message) };
}

function amountReason({ amounts }: PaperTells, { sums }: PaperTarget): Reason | null {
  const same = amounts.filter((one) => one.minor > 0 && sums.includes(one.minor));
  const [first] = same;
  if (first === undefined) return null;
  const total = same.find((one) => one.total);
  return total === undefined ? { score: 30, message: { key: 'suggest-amount', values: { amount: first.minor } } } : { score: 45, message: { key: 'suggest-total', values: { amount: total.minor } } };
}

function dayReason({ dates, day }: PaperTells, { date }: PaperTarget): Reason | null {
  const ways = [...dates.map((one) => ({ date: one.date, weight: one.sure ? 1 : one.first ? 0.8 : 0.5, key: 'printed' })), ...(day === null ? [] : [{ date: day, weight: 0.9, key: 'taken' }])];
  let best: Reason | null = null;
  for (const way of ways) {
    const days = Math.abs(daysBetween(way.date, date));
    const score = days > 14 ? 0 : Math.round(way.weight * (days === 0 ? 30 : days <= 3 ? 20 : 8));
    if (score > (best?.score ?? 0)) best = { score, message: { key: `suggest-${way.key}-${days === 0 ? 'day' : 'near'}`, values: { date: way.date, n: days } } };
  }
  return best;
}

function placeReason({ words }: PaperTells, { placeName }: PaperTarget): Reason | null {
  return namesIt(words, placeName) ? { score: 20, message: { key: 'suggest-place', values: { name: placeName ?? '' } } } : null;
}

function carReason({ words }: PaperTells, { carName, registration }: PaperTarget): Reason | null {
  if (namesRegistration(words, registration)) return { score: 15, message: { key: 'suggest-registration', values: { registration: registration ?? '' } } };
  return namesIt(words, carName) ? { score: 8, message: { key: 'suggest-car', values: { car: carName } } } : null;
}
