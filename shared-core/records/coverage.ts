import type { LocalDate } from '../calendar/local-date.ts';
import type { ServicePlanLine } from '../care/service-plan.ts';
import { sameName } from '../fleet/find-car.ts';
import type { RecordLine, WorkRecord } from './work-record.ts';

/** How far a line of a service was done: as it asks; looked at where it asks for a new one; left undone by someone; by nobody. */
export type CoverageState = 'done' | 'looked-at' | 'not-done' | 'nobody';

/** One time at which a line was worked on. */
export interface CoverageVisit {
  readonly record: WorkRecord;
  readonly line: RecordLine;
}

/** A line of a service and what the records say of it, in order of date. */
export interface CoveredLine {
  readonly line: ServicePlanLine;
  readonly state: CoverageState;
  readonly visits: readonly CoverageVisit[];
}

/** What of a service was done, and what was done beside it. */
export interface Coverage {
  readonly lines: readonly CoveredLine[];
  readonly extras: readonly CoverageVisit[];
}

/**
 * Which lines of a service the records of a stretch of days cover, at home and at garages alike, and what they hold beside
 * it. A line is matched by its item, or by its name where either side has no item.
 *
 * @example coverageOf([{ item: 'oil', name: 'Engine oil', work: 'replace' }], records, from, to).lines[0]?.state //=> 'done'
 */
export function coverageOf(lines: readonly ServicePlanLine[], records: readonly WorkRecord[], from: LocalDate, to: LocalDate): Coverage {
  const visits = records
    .filter((record) => record.date >= from && record.date <= to)
    .sort((a, b) => (a.date === b.date ? (a.id < b.id ? -1 : 1) : a.date < b.date ? -1 : 1))
    .flatMap((record) => record.lines.map((line): CoverageVisit => ({ record, line })));
  const covered = lines.map((line): CoveredLine => {
    const own = visits.filter((visit) => matches(line, visit.line));
    return { line, state: stateOf(line, own), visits: own };
  });
  return { lines: covered, extras: visits.filter((visit) => !lines.some((line) => matches(line, visit.line))) };
}

function matches(line: ServicePlanLine, done: RecordLine): boolean {
  return line.item === null || done.item === null ? sameName(line.name, done.name) : line.item === done.item;
}

/** What is to be replaced is done once it was replaced; what is to be checked once it was looked at, whatever was found. */
function stateOf(line: ServicePlanLine, visits: readonly CoverageVisit[]): CoverageState {
  const worked = visits.filter((visit) => visit.line.outcome !== 'not-done');
  if (worked.some((visit) => line.work === 'check' || replaces(visit.line))) return 'done';
  if (worked.length > 0) return 'looked-at';
  return visits.length > 0 ? 'not-done' : 'nobody';
}

function replaces(line: RecordLine): boolean {
  return line.work === 'replace' && (line.outcome === 'done' || line.outcome === 'acted');
}
