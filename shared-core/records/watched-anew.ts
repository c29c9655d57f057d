import { sameName } from '../fleet/find-car.ts';
import type { Moment } from '../journal/operation.ts';
import type { Observation } from './observation.ts';
import { observationOf, recheckAfter, textOf } from './watched-lines.ts';
import type { RecordLine, WorkRecord } from './work-record.ts';

/**
 * What an amendment makes of the observations of a record's lines: one whose line is still to be watched is carried, its words and day following
 * the line's unless the keeper put them otherwise; one whose line is not is closed by the record; a line to be watched only now has one noted.
 * Each is known by the place of its line. What was seen beside the lines stays as it is. Those alone that change are answered.
 *
 * @example watchedAnew(before, { ...before, lines: [good] }, noted, moment) //=> [{ ...noted[0], closedBy: before.id, closedOn: moment.today }]
 */
export function watchedAnew(before: WorkRecord, after: WorkRecord, noted: readonly Observation[], moment: Moment): readonly Observation[] {
  const open = noted.filter((one) => one.record === before.id && one.closedBy === null);
  return pairsOf(before.lines, after.lines).flatMap(([was, is]) => {
    const seen = was?.line.outcome === 'watch' ? takeOut(open, was) : null;
    if (was !== null && seen !== null) return is?.line.outcome === 'watch' ? carried(seen, { record: before, ...was }, { record: after, ...is }) : [{ ...seen, closedBy: after.id, closedOn: moment.today }];
    return is?.line.outcome === 'watch' && was?.line.outcome !== 'watch' ? [observationOf(after, is.at, recheckAfter(after, moment), moment.newId())] : [];
  });
}

/** A line and its place in the record. */
interface PlacedLine {
  readonly at: number;
  readonly line: RecordLine;
}

/** Each line as it was with what it is now: of the same item, or of the same name where it has none; null where it is gone or new. */
function pairsOf(before: readonly RecordLine[], after: readonly RecordLine[]): readonly (readonly [PlacedLine | null, PlacedLine | null])[] {
  const rest = after.map((line, at): PlacedLine => ({ at, line }));
  const kept = before.map((was, own) => {
    const at = rest.findIndex(({ line: is }) => (was.item === null || is.item === null ? was.item === is.item && sameName(was.name, is.name) : was.item === is.item));
    return [{ at: own, line: was }, at < 0 ? null : (rest.splice(at, 1)[0] ?? null)] as const;
  });
  return [...kept, ...rest.map((is) => [null, is] as const)];
}

/** The observation of a line; one noted before lines were named is known by the line's words. */
function takeOut(open: Observation[], { at: own, line }: PlacedLine): Observation | null {
  const named = open.findIndex((one) => one.line === own);
  const at = named < 0 ? open.findIndex((one) => one.line === undefined && one.text === textOf(line)) : named;
  return at < 0 ? null : (open.splice(at, 1)[0] ?? null);
}

type LineOf = PlacedLine & { readonly record: WorkRecord };

/** Its words and day follow where they are the line's own; what the keeper put otherwise stays. */
function carried(seen: Observation, was: LineOf, is: LineOf): readonly Observation[] {
  const text = seen.text === textOf(was.line) ? textOf(is.line) : seen.text;
  const date = seen.date === was.record.date ? is.record.date : seen.date;
  return date === seen.date && text === seen.text && seen.line === is.at ? [] : [{ ...seen, date, text, line: is.at }];
}
