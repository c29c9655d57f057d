import type DatabaseClass from 'better-sqlite3';
import type { Store } from './store.ts';

const kept = new WeakMap<Store, Map<string, DatabaseClass.Statement>>();

/**
 * A statement prepared once for a database. Each preparation holds memory outside the collector's sight, so thousands of them in
 * one transaction would fill the machine. For `get`, `all` and `run` only: one that is iterated is busy meanwhile.
 */
export function keptStatement<Parameters extends unknown[] | Record<string, unknown>, Row = unknown>(
  store: Store,
  sql: string,
): Parameters extends unknown[] ? DatabaseClass.Statement<Parameters, Row> : DatabaseClass.Statement<[Parameters], Row> {
  const statements = kept.get(store) ?? new Map<string, DatabaseClass.Statement>();
  kept.set(store, statements);
  const statement = statements.get(sql) ?? store.prepare(sql);
  statements.set(sql, statement);
  return statement as never;
}
