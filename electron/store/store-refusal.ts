import { accessSync, constants, existsSync } from 'node:fs';
import { dirname } from 'node:path';
import { refuse } from '../../shared-core/result/result.ts';

const REFUSED_BY_CODE: Readonly<Record<string, string>> = {
  SQLITE_NOTADB: 'not-a-household',
  SQLITE_CORRUPT: 'store-damaged',
  SQLITE_BUSY: 'store-locked',
  SQLITE_LOCKED: 'store-locked',
  SQLITE_FULL: 'disk-full',
  // The shared-memory file cannot grow: the disk is full.
  SQLITE_IOERR_SHMSIZE: 'disk-full',
  SQLITE_READONLY: 'folder-read-only',
  SQLITE_CANTOPEN: 'folder-unreachable',
  SQLITE_IOERR: 'disk-fails',
};

/** A stored value that is not what was written. */
export class DamagedValueError extends Error {
  readonly code = 'SQLITE_CORRUPT';
  constructor(id: string, cause: unknown) {
    super(`the value of ${id} cannot be read`, { cause });
  }
}

/** What an error of the database on a file means to a person; an error of another sort is our bug and goes on. */
export function storeRefusal(error: unknown, file: string): ReturnType<typeof refuse> {
  const known = knownCode(error);
  if (known === undefined) throw error;
  const code = known === 'SQLITE_CANTOPEN' ? unopenedBecause(file) : (REFUSED_BY_CODE[known] ?? 'disk-fails');
  return refuse(code, { why: error instanceof Error ? error.message : known });
}

/** Whether an error tells of the disk, the file or another program, and not of a mistake of ours. */
export function isOfTheDisk(error: unknown): boolean {
  return knownCode(error) !== undefined;
}

function knownCode(error: unknown): string | undefined {
  const found = codeOf(error);
  return Object.keys(REFUSED_BY_CODE).find((prefix) => found === prefix || found.startsWith(`${prefix}_`));
}

/** The code of an error of database or file system; empty where it has none. */
export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}

/** In a folder that cannot be written the log cannot be made beside the database, and then the database says only that it cannot be opened. */
function unopenedBecause(file: string): string {
  if (!existsSync(dirname(file))) return 'folder-unreachable';
  try {
    accessSync(dirname(file), constants.W_OK);
    if (existsSync(file)) accessSync(file, constants.R_OK | constants.W_OK);
    return 'folder-unreachable';
  } catch {
    return 'folder-read-only';
  }
}
