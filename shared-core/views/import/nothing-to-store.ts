import type { Facts } from '../../journal/facts.ts';
import { imports, type Import } from '../../records/import.ts';
import { ok, refuse, type Result } from '../../result/result.ts';
import type { ImportView } from './import-view.ts';

/**
 * Why nothing of a table would be stored: its rows are there already, since the day on which the same file was taken in where
 * it was; or none of them can be.
 *
 * @example nothingToStore(facts, view) //=> refused 'import-all-there-since' with { rows: 3, there: 3, refused: 0, on: '2026-11-25' }
 */
export function nothingToStore(facts: Facts, { digest, counts }: Pick<ImportView, 'digest' | 'counts'>): Result<never> {
  const { rows, duplicates: there, refused } = counts;
  if (there === 0) return refuse('import-nothing', { rows });
  const earlier = standingOf(facts, digest);
  const values = { rows, there, refused };
  if (earlier === undefined) return refuse(refused === 0 ? 'import-all-there' : 'import-nothing-new', values);
  return refuse(refused === 0 ? 'import-all-there-since' : 'import-nothing-new-since', { ...values, on: earlier.on });
}

/**
 * The very same file is not taken in twice unless that is said: read otherwise, with days and months the other way round, its
 * rows would stand beside what it brought before.
 */
export function notTakenInBefore(facts: Facts, digest: string): Result<null> {
  const earlier = standingOf(facts, digest);
  return earlier === undefined ? ok(null) : refuse('import-file-known', { on: earlier.on, import: earlier.id });
}

function standingOf(facts: Facts, digest: string): Import | undefined {
  return facts.all(imports).find((one) => one.digest === digest);
}
