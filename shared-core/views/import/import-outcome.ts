import type { RecordLine } from '../../records/work-record.ts';
import { ok, refuse, type Result } from '../../result/result.ts';

/** What work may have come to, by the words of a table. */
const OUTCOMES: ReadonlyMap<string, RecordLine['outcome']> = new Map([
  ['', 'done'], ['done', 'done'], ['good', 'good'], ['ok', 'good'], ['watch', 'watch'], ['acted', 'acted'], ['not done', 'not-done'], ['no', 'not-done'],
]);

/**
 * The outcome that a cell of a table names; an empty one says that the work was done. Another word is refused: work that was
 * left undone must not count as done.
 *
 * @example meantOutcome('Not-done') //=> { ok: true, value: 'not-done' }
 */
export function meantOutcome(cell: string): Result<RecordLine['outcome']> {
  const outcome = OUTCOMES.get(cell.trim().toLowerCase().replace(/[\s_-]+/g, ' '));
  return outcome === undefined ? refuse('import-outcome', { value: cell.trim().slice(0, 40) }) : ok(outcome);
}
