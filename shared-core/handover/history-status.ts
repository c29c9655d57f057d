import { z } from 'zod';
import { addMonths, monthsBetween } from '../calendar/add-months.ts';
import { dateSchema } from '../calendar/date-schema.ts';
import { daysBetween, type LocalDate } from '../calendar/local-date.ts';
import { sayOf } from '../result/words/say.ts';
import { distanceUnitSchema } from '../units/distance-schema.ts';
import { statusElementSchema, type StatusElement, type StatusInput, type StatusInspection, type StatusItem, type StatusPart, type StatusRecall } from './status-input.ts';

/** `told`: each line of it is known. `in-part`: some are. `not-known`: none is, or it is of days not shown. `none-written`: nothing of the kind is written down. */
export const statusStateSchema = z.enum(['told', 'in-part', 'not-known', 'none-written']);
export type StatusState = z.infer<typeof statusStateSchema>;

/** One thing of an element and how it stands: in words, and for programs. */
export const statusLineSchema = z.strictObject({
  name: z.string(),
  text: z.string(),
  /** False where what the element asks for is not written down, is withheld, or is not shown. */
  known: z.boolean(),
  /** The day on which it was last read, done, measured or settled. */
  on: dateSchema.nullable(),
  /** The last day on which it holds, or the day on which it comes again. */
  until: dateSchema.nullable(),
  /** The whole distance, or that since it was last done. */
  distance: z.strictObject({ value: z.int(), unit: distanceUnitSchema, estimated: z.boolean() }).nullable(),
});
export type StatusLine = z.infer<typeof statusLineSchema>;

/** The status of a car on a day, element by element; `held` counts those that are told whole, of six. */
export const historyStatusSchema = z.strictObject({
  on: dateSchema,
  held: z.int().min(0).max(6),
  elements: z.array(z.strictObject({ element: statusElementSchema, state: statusStateSchema, lines: z.array(statusLineSchema) })).length(6),
});
export type HistoryStatus = z.infer<typeof historyStatusSchema>;

const NOTHING = { known: false, on: null, until: null, distance: null } as const;

/**
 * How a car stands on a day, by the six elements of status that an aircraft's records must hold and hand on with it, by analogy only:
 * the whole distance; what expires or is measured against a limit; time and distance since each item was last done; the last
 * roadworthiness inspection; recalls, how and when settled and what comes again; changes to the car, with their papers. No partial credit.
 *
 * Source: 14 CFR 91.417(a)(2)(i) to (vi) (seen; (vi) in translation; reference section 10). That the sixth asks for papers of a change, and
 * that tyres count among the second by their date code: our own reading.
 * @example historyStatus(input).elements.map((one) => one.state) //=> ['told', 'in-part', 'told', 'told', 'none-written', 'none-written']
 */
export function historyStatus(input: StatusInput): HistoryStatus {
  const lines: Readonly<Record<StatusElement, readonly StatusLine[]>> = {
    'whole-distance': distanceLines(input),
    'limited-parts': input.parts.map((one) => partLine(one, input.on)),
    'since-last-done': input.items.map((one) => itemLine(one, input)),
    inspection: input.inspections.map((one) => inspectionLine(one, input.on)),
    recalls: input.recalls.map(recallLine),
    changes: input.changes.map(changeLine),
  };
  const elements = statusElementSchema.options.map((element) => ({ element, state: stateOf(lines[element], input.hidden.includes(element)), lines: [...lines[element]] }));
  return { on: input.on, held: elements.filter((one) => one.state === 'told').length, elements };
}

function stateOf(lines: readonly StatusLine[], isHidden: boolean): StatusState {
  const known = lines.filter((one) => one.known).length;
  if (lines.length === 0) return isHidden ? 'not-known' : 'none-written';
  if (known === 0) return 'not-known';
  return known === lines.length && !isHidden ? 'told' : 'in-part';
}

/** What was read last, and what is reckoned for the day itself; an instrument replaced on a guess makes both of them one. */
function distanceLines({ on, unit, lastRead, likely, instrumentGuessed }: StatusInput): StatusLine[] {
  const name = sayOf('status-last-read');
  const read: StatusLine = lastRead === null
    ? { ...NOTHING, name, text: sayOf('status-last-read-none') }
    : { ...NOTHING, name, text: sayOf(instrumentGuessed ? 'status-read-guessed' : 'status-read', { value: lastRead.whole, unit, date: lastRead.on }), known: true, on: lastRead.on, distance: { value: lastRead.whole, unit, estimated: instrumentGuessed } };
  if (lastRead?.on === on) return [read];
  const day = sayOf('status-on-day', { date: on });
  if (likely === null) return [read, { ...NOTHING, name: day, text: sayOf('status-nothing-to-reckon') }];
  return [read, { ...NOTHING, name: day, text: sayOf(instrumentGuessed ? 'status-likely-guessed' : 'status-likely', { value: likely, unit }), known: true, on, distance: { value: likely, unit, estimated: true } }];
}

function partLine(part: StatusPart, today: LocalDate): StatusLine {
  const { name } = part;
  switch (part.kind) {
    case 'dated':
      return { ...NOTHING, name, text: sayOf(part.until < today ? 'status-expired' : 'status-good-until', { date: part.until }), known: true, until: part.until };
    case 'measured':
      if (part.limit === null) return { ...NOTHING, name, text: sayOf('status-measured-no-limit', { newest: part.newest }), on: part.on };
      return { ...NOTHING, name, text: sayOf('status-measured', { newest: part.newest, limit: part.limit, verdict: part.verdict }), known: true, on: part.on };
    case 'not-measured':
      return { ...NOTHING, name, text: sayOf('status-not-measured') };
    case 'tyre':
      return { ...NOTHING, name, text: part.made === null ? sayOf('status-no-date-code') : sayOf('status-made', { made: part.made }), known: part.made !== null };
  }
}

function itemLine({ name, last, neverSince, whyNot }: StatusItem, { on, unit }: StatusInput): StatusLine {
  if (whyNot !== null) return { ...NOTHING, name, text: sayOf('status-not-known-why', { why: whyNot }), on: last?.on ?? null };
  const since = last ?? neverSince;
  if (since === null) return { ...NOTHING, name, text: sayOf('status-no-record') };
  const time = sayTime(since.on, on);
  const span = since.distance === null ? sayOf('status-time-no-way', { time }) : sayOf(since.distance.estimated ? 'status-time-and-about' : 'status-time-and-way', { time, value: since.distance.value, unit });
  const text = last === null ? sayOf('status-since-registration', { span }) : sayOf('status-since-done', { span, date: since.on });
  return { name, text, known: true, on: last?.on ?? null, until: null, distance: since.distance === null ? null : { ...since.distance, unit } };
}

/** @example sayTime('2025-01-31', '2026-03-03') //=> '13 months and 3 days' */
function sayTime(from: LocalDate, to: LocalDate): string {
  const months = monthsBetween(from, to);
  const days = daysBetween(addMonths(from, months), to);
  if (months === 0) return sayOf('span-days', { n: days });
  const whole = sayOf('span-months', { n: months });
  return days === 0 ? whole : sayOf('status-months-days', { months: whole, days: sayOf('span-days', { n: days }) });
}

function inspectionLine({ name, last, until, whyNot }: StatusInspection, today: LocalDate): StatusLine {
  const holds = until === null ? sayOf('status-holds-not-written') : sayOf(until < today ? 'status-ran-out' : 'status-holds-until', { date: until });
  if (last === null) return { ...NOTHING, name, text: sayOf('status-inspection-none', { holds, why: whyNot ?? sayOf('status-inspection-no-record') }), until };
  const { on, by, result, reference } = last;
  const said = { span: sayTime(on, today), date: on, result: result ?? sayOf('status-result-not-written'), by, holds };
  const text = reference === null ? sayOf('status-inspection', said) : sayOf('status-inspection-reference', { ...said, reference });
  return { ...NOTHING, name, text, known: until !== null && result !== null, on, until };
}

function recallLine({ number, what, how, doneOn, doneBy, nextOn, late }: StatusRecall): StatusLine {
  const name = sayOf('status-recall', { number, what });
  if (doneOn === null) return { ...NOTHING, name, text: nextOn === null ? sayOf('status-recall-open') : sayOf(late ? 'status-recall-booked-passed' : 'status-recall-booked', { date: nextOn }), known: true, until: nextOn };
  const again = nextOn === null ? sayOf('status-recall-nothing-again') : sayOf(late ? 'status-recall-again-passed' : 'status-recall-again', { date: nextOn });
  const said = { date: doneOn, how: how ?? sayOf('status-how-not-written'), again };
  return { ...NOTHING, name, text: doneBy === null ? sayOf('status-recall-settled', said) : sayOf('status-recall-settled-by', { ...said, by: doneBy }), known: how !== null, on: doneOn, until: nextOn };
}

function changeLine({ name, on, papers }: StatusInput['changes'][number]): StatusLine {
  const kept = papers === 0 ? sayOf('status-no-paper') : sayOf('status-papers', { n: papers });
  return { ...NOTHING, name, text: sayOf('status-change', { date: on, kept }), known: papers > 0, on };
}
