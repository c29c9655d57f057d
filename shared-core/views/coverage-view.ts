import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import { FIRST_DATE, later, type LocalDate } from '../calendar/local-date.ts';
import { serviceItems } from '../care/service-item.ts';
import { servicePlanLineSchema, servicePlans, servicePlanSchema, type ServicePlan, type ServicePlanLine } from '../care/service-plan.ts';
import { findCar } from '../fleet/find-car.ts';
import type { Facts } from '../journal/facts.ts';
import { ask } from '../journal/operation.ts';
import { coverageOf, type Coverage, type CoverageVisit } from '../records/coverage.ts';
import { observations, observationSchema } from '../records/observation.ts';
import { recordsWithPapers } from '../records/tied-papers.ts';
import { recordLineSchema, workRecordSchema, type WorkRecord } from '../records/work-record.ts';
import { compareNames } from '../result/compare-names.ts';
import { idSchema } from '../result/id.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { say } from '../result/words/say.ts';

const visitSchema = z.object({
  record: z.string(),
  title: z.string(),
  date: dateSchema,
  place: workRecordSchema.shape.place,
  /** Who did it: the person, else the garage; null where nobody wrote it down. */
  by: z.string().nullable(),
  name: z.string(),
  work: recordLineSchema.shape.work,
  outcome: recordLineSchema.shape.outcome,
  note: z.string(),
  papers: z.int(),
  /** Written from memory. */
  reconstructed: z.boolean(),
});
export type VisitView = z.infer<typeof visitSchema>;

const lineSchema = servicePlanLineSchema.extend({
  state: z.enum(['done', 'looked-at', 'not-done', 'nobody']),
  text: z.string(),
  /** What was found or done last. */
  outcome: recordLineSchema.shape.outcome.nullable(),
  visits: z.array(visitSchema),
});

export const coverageViewSchema = z.object({
  today: dateSchema,
  car: z.object({ id: z.string(), name: z.string() }),
  /** Every named service of the car and how far it is, the one that began last first. */
  plans: z.array(z.object({ id: z.string(), name: z.string(), from: dateSchema, to: dateSchema.nullable(), lines: z.int(), done: z.int() })),
  /** The named service; null where all items of the car are held against the records. */
  plan: servicePlanSchema.nullable(),
  from: dateSchema,
  to: dateSchema,
  lines: z.array(lineSchema),
  /** Lines that were done beside those asked for. */
  extras: z.array(visitSchema),
  counts: z.object({ lines: z.int(), done: z.int(), lookedAt: z.int(), notDone: z.int(), nobody: z.int() }),
  /** How many of the lines done each did, at home and at garages. */
  by: z.array(z.object({ place: workRecordSchema.shape.place, by: z.string().nullable(), lines: z.int() })),
  /** What is to be watched of these records and not settled yet. */
  watched: z.array(observationSchema),
  text: z.string(),
});
export type CoverageView = z.infer<typeof coverageViewSchema>;

export const coverageRequestSchema = z.strictObject({
  car: z.string().min(1).max(80),
  plan: idSchema.nullable().default(null),
  /** The plan's own days unless given; without a plan from the car's first day until today. */
  from: dateSchema.nullable().default(null),
  to: dateSchema.nullable().default(null),
});

/** Which lines of a service were done, by whom and when, and which nobody has done. */
export const showCoverage = ask({
  request: coverageRequestSchema,
  reply: coverageViewSchema,
  answer: (facts, request, moment) => {
    const car = findCar(facts, request.car);
    if (!car.ok) return car;
    const plan = planOf(facts, car.value.id, request.plan);
    if (!plan.ok) return plan;
    const from = request.from ?? plan.value?.from ?? car.value.firstRegistered ?? FIRST_DATE;
    // A service that is yet to begin has no days so far.
    const to = request.to ?? plan.value?.to ?? later(from, moment.today);
    if (to < from) return refuse('service-ends-before', { from, to }, ['to']);
    const lines = plan.value?.lines ?? linesOfItems(facts, car.value.id);
    const records = recordsWithPapers(facts, car.value.id);
    const { id, name } = car.value;
    return ok({ today: moment.today, car: { id, name }, plans: plansOf(facts, id, records, moment.today), plan: plan.value, from, to, ...viewOf(facts, id, coverageOf(lines, records, from, to)) });
  },
});

function planOf(facts: Facts, car: string, wanted: string | null): Result<ServicePlan | null> {
  if (wanted === null) return ok(null);
  const plan = facts.get(servicePlans, wanted);
  return plan === null || plan.car !== car ? refuse('unknown-service', { service: wanted }, ['plan']) : ok(plan);
}

function plansOf(facts: Facts, car: string, records: readonly WorkRecord[], today: LocalDate): CoverageView['plans'] {
  const plans = [...facts.ofCar(servicePlans, car)].sort((a, b) => (a.from === b.from ? compareNames(a.name, b.name) : a.from < b.from ? 1 : -1));
  return plans.map(({ id, name, from, to, lines }) => {
    const covered = coverageOf(lines, records, from, to ?? today).lines;
    return { id, name, from, to, lines: lines.length, done: covered.filter((line) => line.state === 'done').length };
  });
}

function linesOfItems(facts: Facts, car: string): readonly ServicePlanLine[] {
  return facts.ofCar(serviceItems, car).map((item) => ({ item: item.id, name: item.name, work: item.work }));
}

function viewOf(facts: Facts, car: string, { lines, extras }: Coverage): Pick<CoverageView, 'lines' | 'extras' | 'counts' | 'by' | 'watched' | 'text'> {
  const count = (state: Coverage['lines'][number]['state']) => lines.filter((line) => line.state === state).length;
  const counts = { lines: lines.length, done: count('done'), lookedAt: count('looked-at'), notDone: count('not-done'), nobody: count('nobody') };
  const records = new Set([...lines.flatMap((line) => line.visits), ...extras].map((visit) => visit.record.id));
  return {
    lines: lines.map(({ line, state, visits }) => ({ ...line, state, text: say({ key: `coverage-${state}`, values: {} }), outcome: visits.at(-1)?.line.outcome ?? null, visits: visits.map(visitView) })),
    extras: extras.map(visitView),
    counts,
    by: doneBy(lines),
    watched: facts.ofCar(observations, car).filter((seen) => seen.closedOn === null && seen.record !== null && records.has(seen.record)),
    text: say({ key: wordsOf(counts), values: { done: counts.done, lines: counts.lines } }),
  };
}

function wordsOf({ lines, done }: { readonly lines: number; readonly done: number }): string {
  if (lines === 0) return 'coverage-none';
  if (lines === 1 && done === 0) return 'coverage-one-open';
  return `coverage-${done === lines ? 'whole' : 'open'}${done === 1 ? '-one' : ''}`;
}

function visitView({ record, line }: CoverageVisit): VisitView {
  const { id, title, date, place, papers, reconstructed } = record;
  const { name, work, outcome, note } = line;
  return { record: id, title, date, place, by: whoDid(record), name, work, outcome, note, papers: papers.length, reconstructed };
}

function whoDid({ doneBy: person, placeName }: CoverageVisit['record']): string | null {
  return person ?? placeName;
}

/** Each line that is done counts once for everyone who worked on it. */
function doneBy(lines: Coverage['lines']): CoverageView['by'] {
  const by = new Map<string, { place: 'home' | 'garage'; by: string | null; lines: number }>();
  for (const { visits } of lines.filter((line) => line.state === 'done')) {
    const worked = visits.filter((visit) => visit.line.outcome !== 'not-done');
    for (const [key, visit] of new Map(worked.map((one) => [`${one.record.place}/${whoDid(one.record) ?? ''}`, one]))) {
      const sum = by.get(key) ?? { place: visit.record.place, by: whoDid(visit.record), lines: 0 };
      by.set(key, { ...sum, lines: sum.lines + 1 });
    }
  }
  return [...by.values()].sort((a, b) => b.lines - a.lines || compareNames(a.place, b.place) || compareNames(a.by ?? '', b.by ?? ''));
}
