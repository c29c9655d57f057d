import { z } from 'zod';
import { addMonths, monthsBetween } from '../calendar/add-months.ts';
import { dateSchema } from '../calendar/date-schema.ts';
import { daysBetween, type LocalDate } from '../calendar/local-date.ts';
import { sayDate, sayNumber } from '../result/words/say.ts';
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
  const guessed = instrumentGuessed ? '; with what an instrument before had shown, which is estimated' : '';
  const read: StatusLine = lastRead === null
    ? { ...NOTHING, name: 'Last read', text: 'not known: no reading is shown that counts' }
    : { ...NOTHING, name: 'Last read', text: `${sayNumber(lastRead.whole)} ${unit}, read on ${sayDate(lastRead.on)}${guessed}`, known: true, on: lastRead.on, distance: { value: lastRead.whole, unit, estimated: instrumentGuessed } };
  if (lastRead?.on === on) return [read];
  const name = `On ${sayDate(on)}`;
  if (likely === null) return [read, { ...NOTHING, name, text: 'not known: there is nothing to reckon it from' }];
  return [read, { ...NOTHING, name, text: `about ${sayNumber(likely)} ${unit}, estimated from readings${guessed}`, known: true, on, distance: { value: likely, unit, estimated: true } }];
}

function partLine(part: StatusPart, today: LocalDate): StatusLine {
  const { name } = part;
  switch (part.kind) {
    case 'dated':
      return { ...NOTHING, name, text: part.until < today ? `expired on ${sayDate(part.until)}` : `good until ${sayDate(part.until)}`, known: true, until: part.until };
    case 'measured':
      if (part.limit === null) return { ...NOTHING, name, text: `measured: ${part.newest}; no limit is written down`, on: part.on };
      return { ...NOTHING, name, text: `measured: ${part.newest}; limit ${part.limit}. ${part.verdict}`, known: true, on: part.on };
    case 'not-measured':
      return { ...NOTHING, name, text: 'not known: to be measured, and no measurement is shown' };
    case 'tyre':
      return { ...NOTHING, name, text: part.made === null ? 'not known: no date code is written down' : `made ${part.made}; no limit of age is written down`, known: part.made !== null };
  }
}

function itemLine({ name, last, neverSince, whyNot }: StatusItem, { on, unit }: StatusInput): StatusLine {
  if (whyNot !== null) return { ...NOTHING, name, text: `not known: ${whyNot}`, on: last?.on ?? null };
  const since = last ?? neverSince;
  if (since === null) return { ...NOTHING, name, text: 'not known: no record of it' };
  const way = since.distance === null ? ', distance not known' : ` and ${since.distance.estimated ? 'about ' : ''}${sayNumber(since.distance.value)} ${unit}`;
  const text = last === null ? `never done, as its keeper says: ${sayTime(since.on, on)}${way} since first registration` : `${sayTime(since.on, on)}${way} since it was done on ${sayDate(since.on)}`;
  return { name, text, known: true, on: last?.on ?? null, until: null, distance: since.distance === null ? null : { ...since.distance, unit } };
}

/** @example sayTime('2025-01-31', '2026-03-03') //=> '13 months and 3 days' */
function sayTime(from: LocalDate, to: LocalDate): string {
  const months = monthsBetween(from, to);
  const days = daysBetween(addMonths(from, months), to);
  const count = (of: number, word: string) => `${of} ${word}${of === 1 ? '' : 's'}`;
  if (months === 0) return count(days, 'day');
  return days === 0 ? count(months, 'month') : `${count(months, 'month')} and ${count(days, 'day')}`;
}

function inspectionLine({ name, last, until, whyNot }: StatusInspection, today: LocalDate): StatusLine {
  const holds = until === null ? 'until when it holds is not written down' : until < today ? `ran out on ${sayDate(until)}` : `holds until ${sayDate(until)}`;
  if (last === null) return { ...NOTHING, name, text: `${holds}; when it was last done is not known: ${whyNot ?? 'no record of it'}`, until };
  const { on, by, result, reference } = last;
  const text = `${sayTime(on, today)} since the last one on ${sayDate(on)}, ${result ?? 'result not written down'}, ${by}${reference === null ? '' : `, ${reference}`}; ${holds}`;
  return { ...NOTHING, name, text, known: until !== null && result !== null, on, until };
}

function recallLine({ number, what, how, doneOn, doneBy, nextOn, late }: StatusRecall): StatusLine {
  const name = `${number}: ${what}`;
  if (doneOn === null) return { ...NOTHING, name, text: nextOn === null ? 'open: not done' : `open: not done, booked for ${sayDate(nextOn)}${late ? ', which has passed' : ''}`, known: true, until: nextOn };
  const again = nextOn === null ? 'nothing comes again' : `comes again on ${sayDate(nextOn)}${late ? ', which has passed' : ''}`;
  return { ...NOTHING, name, text: `settled on ${sayDate(doneOn)}: ${how ?? 'how is not written down'}${doneBy === null ? '' : `, by ${doneBy}`}; ${again}`, known: how !== null, on: doneOn, until: nextOn };
}

function changeLine({ name, on, papers }: StatusInput['changes'][number]): StatusLine {
  const kept = papers === 0 ? 'no paper of it is kept' : `${papers} paper${papers === 1 ? '' : 's'} with its record`;
  return { ...NOTHING, name, text: `done on ${sayDate(on)}; ${kept}`, known: papers > 0, on };
}
