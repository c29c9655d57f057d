import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Measurement } from '../care/measurement.ts';
import { obligations } from '../care/obligation.ts';
import { covers } from '../care/series-limits.ts';
import { serviceItemSchema, type ServiceItem } from '../care/service-item.ts';
import type { Car } from '../fleet/car.ts';
import { findCar } from '../fleet/find-car.ts';
import type { KnownDistance } from '../fleet/known-distance.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { intakeAnswers, intakeAnswerKindSchema, type IntakeAnswer } from '../records/intake-answer.ts';
import type { WorkRecord } from '../records/work-record.ts';
import { compareNames } from '../result/compare-names.ts';
import { ok, type Message } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { careOf, type CarCare, type ItemCare } from './car-care.ts';
import { isCaredFor } from './cared-for.ts';
import { intakeAdvice, notDueBefore, type IntakeKnowledge } from './intake-advice.ts';
import { leadTimes } from './notice-days.ts';

const date = dateSchema.nullable();
const saidSchema = z.object({ code: z.string(), values: z.record(z.string(), z.union([z.string(), z.number(), z.null()])), text: z.string() });

const intakeItemSchema = z.object({
  item: z.string(),
  name: z.string(),
  work: serviceItemSchema.shape.work,
  harm: serviceItemSchema.shape.harm,
  minutes: z.number().nullable(),
  knowledge: z.enum(['proven', 'recorded', 'said', 'unknown', 'from-purchase', 'never-done', 'dated']),
  /** Has been asked and answered. */
  answered: intakeAnswerKindSchema.nullable(),
  /** Whether it is to be asked; `none` where its own dates or records made otherwise say it all. */
  question: z.enum(['open', 'settled', 'none']),
  /** The work it was answered with has its reading already. */
  readingGiven: z.boolean(),
  doneOn: date,
  record: z.string().nullable(),
  until: date,
  /** Whether that day is exact; a forecast is said by its month. */
  exact: z.boolean(),
  reason: saidSchema,
});
export type IntakeItem = z.infer<typeof intakeItemSchema>;

export const intakeViewSchema = z.object({
  today: dateSchema,
  car: z.object({ id: z.string(), name: z.string(), keptSince: date, firstRegistered: date }),
  /** What is missing of the car itself, to be entered first. */
  first: z.array(saidSchema),
  /** Do these to start from firm ground; only look at these; these may wait. */
  now: z.array(intakeItemSchema),
  look: z.array(intakeItemSchema),
  wait: z.array(intakeItemSchema),
  counts: z.object({ items: z.int(), questions: z.int(), open: z.int(), answered: z.int(), proven: z.int(), said: z.int(), unknown: z.int() }),
  minutes: z.object({ now: z.int(), look: z.int(), without: z.int() }),
});
export type IntakeView = z.infer<typeof intakeViewSchema>;

/** What is known of a car just bought, item by item, and what to do first. */
export const showIntake = ask({
  request: z.strictObject({ car: z.string().min(1).max(80) }),
  reply: intakeViewSchema,
  answer: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const care = careOf(facts, car.value, moment.today, leadTimes(facts));
    const items = itemsOf(facts, care, moment.today);
    const of = (when: 'now' | 'look' | 'wait') => items.filter((one) => one.when === when).map(({ when: _when, ...item }) => item);
    const [now, look, wait] = [of('now'), of('look'), of('wait').sort(bySoonestEnd)];
    const { id, name, keptSince, firstRegistered } = car.value;
    return ok({ today: moment.today, car: { id, name, keptSince, firstRegistered }, first: missingOf(facts, care).map(saidView), now, look, wait, counts: countsOf(items), minutes: minutesOf(now, look) });
  },
});

type AdvisedItem = IntakeItem & { readonly when: 'now' | 'look' | 'wait' };

function itemsOf(facts: Facts, care: CarCare, today: LocalDate): readonly AdvisedItem[] {
  const answers = new Map(facts.ofCar(intakeAnswers, care.car.id).map((answer) => [answer.item, answer]));
  const known: KnownDistance = { points: care.use.points, usage: care.use.usage, firstRegistered: care.car.firstRegistered };
  return care.items.filter(isCaredFor).map((one) => itemOf(care, one, answers.get(one.item.id) ?? null, known, today)).sort(bySafetyFirst);
}

function itemOf(care: CarCare, one: ItemCare, answer: IntakeAnswer | null, known: KnownDistance, today: LocalDate): AdvisedItem {
  const doneOn = one.completions.at(-1)?.date ?? null;
  const record = doneOn === null ? null : recordOf(care.records, one.item, doneOn);
  const knowledge = knowledgeOf(one.item, care.car, record, today);
  const { when, until, exact, reason } = intakeAdvice({ care: one, knowledge, doneOn, notBefore: notDueBefore(one.item, care.car, care.use, known), measured: newestOf(care, one.item), today });
  const { id, name, work, harm, minutes } = one.item;
  const given = answer?.record == null ? null : (care.records.find((each) => each.id === answer.record)?.reading ?? null);
  return { item: id, name, work, harm, minutes, knowledge, answered: answer?.answer ?? null, question: questionOf(one, knowledge, answer), readingGiven: given !== null, doneOn, record: record?.id ?? null, until, exact, reason: saidView(reason), when };
}

/** The newest measurement of what an item is measured by, of the part that is in. */
function newestOf({ wear }: CarCare, { measure }: ServiceItem): Measurement | null {
  const mine = wear.filter(({ series }) => measure !== null && covers(measure, series.subject));
  const counted = mine.flatMap(({ series }) => series.all.filter(({ part }) => part === 'counts' || part === 'no-distance').map(({ measurement }) => measurement));
  return counted.reduce<Measurement | null>((newest, one) => (newest === null || one.date > newest.date ? one : newest), null);
}

/** The record of a day that holds the item; one with a paper goes before one without. */
function recordOf(records: readonly WorkRecord[], item: ServiceItem, on: LocalDate): WorkRecord | null {
  const of = records.filter((record) => record.date === on && record.lines.some((line) => line.item === item.id && line.outcome !== 'not-done'));
  return of.find((record) => record.papers.length > 0) ?? of.at(0) ?? null;
}

function knowledgeOf(item: ServiceItem, car: Car, record: WorkRecord | null, today: LocalDate): IntakeKnowledge {
  if (record !== null) return record.papers.length > 0 ? 'proven' : record.reconstructed ? 'said' : 'recorded';
  // A day of the calendar that has passed, with nobody knowing whether it was done, says nothing.
  const passed = item.anchor.kind === 'calendar' && item.history === 'unknown' && item.anchor.firstDate <= today;
  if (item.anchor.kind !== 'completion' && !passed) return 'dated';
  return item.history === 'from-purchase' && car.keptSince === null ? 'unknown' : item.history;
}

/** What is taken to be never done and would be due by now is asked about too: nobody may have said so. */
function questionOf({ window }: ItemCare, knowledge: IntakeKnowledge, answer: IntakeAnswer | null): IntakeItem['question'] {
  if (answer !== null) return 'settled';
  if (knowledge === 'unknown') return 'open';
  if (knowledge === 'never-done') return window.state === 'late' || window.state === 'probably-due' ? 'open' : 'settled';
  return knowledge === 'from-purchase' ? 'settled' : 'none';
}

function missingOf(facts: Facts, { car, use, items }: CarCare): readonly Message[] {
  const missing = [
    use.points.length === 0 ? 'intake-no-reading' : null,
    car.firstRegistered === null ? 'intake-no-registration' : null,
    car.keptSince === null && items.some(({ item }) => item.anchor.kind === 'completion' && item.history !== 'never-done') ? 'intake-no-purchase' : null,
    !items.some(isCaredFor) ? 'intake-no-items' : null,
    facts.ofCar(obligations, car.id).length === 0 ? 'intake-no-obligations' : null,
  ];
  return missing.flatMap((key) => (key === null ? [] : [{ key, values: {} }]));
}

const HARM = { safety: 0, damage: 1, comfort: 2 } as const;

/** What may wait stands in the order in which it ends waiting. */
function bySoonestEnd(a: IntakeItem, b: IntakeItem): number {
  const until = (one: IntakeItem) => one.until ?? '9999';
  return until(a) < until(b) ? -1 : until(a) > until(b) ? 1 : HARM[a.harm] - HARM[b.harm];
}

function bySafetyFirst(a: AdvisedItem, b: AdvisedItem): number {
  const until = (one: AdvisedItem) => one.until ?? '9999';
  return HARM[a.harm] - HARM[b.harm] || (until(a) < until(b) ? -1 : until(a) > until(b) ? 1 : 0) || compareNames(a.name, b.name);
}

function countsOf(items: readonly AdvisedItem[]): IntakeView['counts'] {
  const known = (knowledge: IntakeKnowledge) => items.filter((one) => one.knowledge === knowledge).length;
  const asked = items.filter((one) => one.question !== 'none').length;
  const open = items.filter((one) => one.question === 'open').length;
  return { items: items.length, questions: asked, open, answered: items.filter((one) => one.answered !== null).length, proven: known('proven'), said: known('said'), unknown: known('unknown') };
}

function minutesOf(now: readonly IntakeItem[], look: readonly IntakeItem[]): IntakeView['minutes'] {
  const sum = (items: readonly IntakeItem[]) => items.reduce((minutes, item) => minutes + (item.minutes ?? 0), 0);
  return { now: sum(now), look: sum(look), without: [...now, ...look].filter((item) => item.minutes === null).length };
}

function saidView(message: Message): z.infer<typeof saidSchema> {
  return { code: message.key, values: { ...message.values }, text: say(message) };
}
