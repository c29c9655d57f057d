import { sameName } from '../fleet/find-car.ts';
import type { Moment } from '../journal/operation.ts';
import type { Observation } from './observation.ts';
import { observationOf, recheckAfter, textOf } from './watched-lines.ts';
import type { RecordLine, WorkRecord } from './work-record.ts';

/**
 * What an amendment makes of the observations of a record's lines: one whose line is still to be watched is carried, its words
 * and day following the line's; one whose line is not is closed by the record; a line to be watched only now has one noted.
 * What was seen beside the lines stays as it is. Those alone that change are answered.
 *
 * @example watchedAnew(before, { ...before, lines: [good] }, noted, moment) //=> [{ ...noted[0], closedBy: before.id, closedOn: moment.today }]
 */
export function watchedAnew(before: WorkRecord, after: WorkRecord, noted: readonly Observation[], moment: Moment): readonly Observation[] {
  const open = noted.filter((one) => one.record === before.id && one.closedBy === null);
  const pairs = pairsOf(before.lines, after.lines);
  return pairs.flatMap(([was, is]) => {
    const seen = was?.outcome === 'watch' ? takeOut(open, textOf(was)) : null;
    if (seen !== null) return is?.outcome === 'watch' ? carried(seen, is, after) : [{ ...seen, closedBy: after.id, closedOn: moment.today }];
    return is?.outcome === 'watch' && was?.outcome !== 'watch' ? [observationOf(after, is, recheckAfter(after, moment), moment.newId())] : [];
  });
}

/** Each line as it was with what it is now: of the same item, or of the same name where it has none; null where it is gone or new. */
function pairsOf(before: readonly RecordLine[], after: readonly RecordLine[]): readonly (readonly [RecordLine | null, RecordLine | null])[] {
  const rest = [...after];
  const kept = before.map((was) => {
    const at = rest.findIndex((is) => (was.item === null || is.item === null ? was.item === is.item && sameName(was.name, is.name) : was.item === is.item));
    return [was, at < 0 ? null : (rest.splice(at, 1)[0] ?? null)] as const;
  });
  return [...kept, ...rest.map((is) => [null, is] as const)];
}

function takeOut(open: Observation[], text: string): Observation | null {
  const at = open.findIndex((one) => one.text === text);
  return at < 0 ? null : (open.splice(at, 1)[0] ?? null);
}

function carried(seen: Observation, line: RecordLine, record: WorkRecord): readonly Observation[] {
  const now: Observation = { ...seen, date: record.date, text: textOf(line) };
  return now.date === seen.date && now.text === seen.text ? [] : [now];
}
