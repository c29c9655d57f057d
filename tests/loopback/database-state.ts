import { createHash } from 'node:crypto';
import Database from 'better-sqlite3';

/** What stands in a household's database, seen from beside the program. */
export interface DatabaseState {
  /** One digest of every row of every table; read anew only after something was written. */
  digest(): string;
  close(): void;
}

export function databaseState(file: string): DatabaseState {
  const beside = new Database(file, { readonly: true });
  let known = { version: -1, digest: '' };
  const read = (): string => {
    const hash = createHash('sha256');
    const tables = beside.prepare<[], { name: string }>("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name").all();
    for (const { name } of tables) {
      hash.update(name);
      for (const row of beside.prepare(`SELECT * FROM "${name}"`).raw().iterate()) hash.update(JSON.stringify(row));
    }
    return hash.digest('hex');
  };
  return {
    digest: () => {
      const version = beside.pragma('data_version', { simple: true }) as number;
      if (version !== known.version) known = { version, digest: read() };
      return known.digest;
    },
    close: () => void beside.close(),
  };
}
