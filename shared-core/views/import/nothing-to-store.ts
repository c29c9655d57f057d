import type { Facts } from '../../journal/facts.ts';
import { imports } from '../../records/import.ts';
import { refuse, type Result } from '../../result/result.ts';
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
  const earlier = facts.all(imports).find((one) => one.digest === digest);
  const values = { rows, there, refused };
  if (earlier === undefined) return refuse(refused === 0 ? 'import-all-there' : 'import-nothing-new', values);
  return refuse(refused === 0 ? 'import-all-there-since' : 'import-nothing-new-since', { ...values, on: earlier.on });
}
