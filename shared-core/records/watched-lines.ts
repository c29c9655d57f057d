import { addMonths } from '../calendar/add-months.ts';
import { later, type LocalDate } from '../calendar/local-date.ts';
import type { Moment } from '../journal/operation.ts';
import { must } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import type { Observation } from './observation.ts';
import type { RecordLine, WorkRecord } from './work-record.ts';

/** Months until what is to be watched is looked at again, unless the keeper says otherwise (ours, no source). */
const MONTHS_TO_RECHECK = 3;
const LONGEST_TEXT = 300;

interface AskedLine {
  readonly recheckOn?: LocalDate | null | undefined;
}

/**
 * The observations that a record's lines make: one for each whose outcome is to be watched, to be looked at again on the day
 * given, else three months after the record but no sooner than today. A day of null says that none is wanted.
 *
 * @example watchedLines(record, [{ recheckOn: '2027-01-10' }], moment) //=> [{ text: 'Front pads: 4 mm', recheckOn: '2027-01-10', ... }]
 */
export function watchedLines(record: WorkRecord, asked: readonly AskedLine[], moment: Moment): Result<readonly Observation[]> {
  const noted: Observation[] = [];
  for (const [at, line] of record.lines.entries()) {
    const recheckOn = asked[at]?.recheckOn;
    if (line.outcome !== 'watch' && recheckOn != null) return refuse('recheck-without-watch', { line: line.name }, ['lines', at, 'recheckOn']);
    if (line.outcome !== 'watch' || recheckOn === null) continue;
    if (recheckOn !== undefined && recheckOn < record.date) return refuse('recheck-before-record', { date: recheckOn }, ['lines', at, 'recheckOn']);
    noted.push(observationOf(record, at, recheckOn ?? recheckAfter(record, moment), moment.newId()));
  }
  return ok(noted);
}

/** When what is to be watched is looked at again, where nobody gave a day: three months after the work, but no sooner than today. */
export function recheckAfter(record: WorkRecord, { today }: Pick<Moment, 'today'>): LocalDate {
  return later(addMonths(record.date, MONTHS_TO_RECHECK), today);
}

/** The observation that a line to be watched makes, by its place in the record. */
export function observationOf(record: WorkRecord, at: number, recheckOn: LocalDate, id: string): Observation {
  return { id, car: record.car, date: record.date, text: textOf(must(record.lines[at], 'a line of the record')), severity: 'watch', recheckOn, record: record.id, line: at, papers: [], closedBy: null, closedOn: null };
}

/** The line's name and what was noted, on one line, cut between characters. */
export function textOf({ name, note }: RecordLine): string {
  const said = note === '' ? name : `${name}: ${note.replace(/\s+/g, ' ')}`;
  return said.slice(0, LONGEST_TEXT).replace(/[\ud800-\udbff]$/, '').trim();
}
