import { closeSync, existsSync, openSync, readSync } from 'node:fs';
import { dirname } from 'node:path';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { fileRefusal } from '../host/file-refusal.ts';
import { APPLICATION_ID } from './store.ts';

const HEADER_BYTES = 100;
const MAGIC = 'SQLite format 3\0';
const USER_VERSION_AT = 60;
const APPLICATION_ID_AT = 68;

/**
 * What a file is by its first hundred bytes, read as plain bytes: the database itself would bring even a stranger's file up
 * to date when it opens one. `newest` is the newest version of the schema that this program knows.
 *
 * Source: SQLite file format, header string and the numbers at 60 and 68 (seen).
 * @example judgeDatabaseFile('/nowhere/yet/household.sqlite', 10) //=> refused 'folder-unreachable'
 */
export function judgeDatabaseFile(file: string, newest: number): Result<'new' | 'household'> {
  if (!existsSync(dirname(file))) return refuse('folder-unreachable', { why: dirname(file) });
  const header = readHeader(file);
  if (!header.ok) return header;
  const bytes = header.value;
  if (bytes.length === 0) return ok('new');
  if (!bytes.toString('latin1').startsWith(MAGIC.slice(0, bytes.length))) return refuse('not-a-household');
  if (bytes.length < HEADER_BYTES) return refuse('store-damaged', { why: 'the file is cut short' });
  if (bytes.readUInt32BE(APPLICATION_ID_AT) !== APPLICATION_ID) return refuse('not-a-household');
  const version = bytes.readInt32BE(USER_VERSION_AT);
  return version > newest ? refuse('store-from-the-future', { found: version, known: newest }) : ok('household');
}

/** The first bytes of a file; none where there is no file. */
function readHeader(file: string): Result<Buffer> {
  let handle: number | null = null;
  try {
    // For writing too: a file that may only be read is opened by the database without a word, and refuses the first change.
    handle = openSync(file, 'r+');
    const bytes = Buffer.alloc(HEADER_BYTES);
    return ok(bytes.subarray(0, readSync(handle, bytes, 0, HEADER_BYTES, 0)));
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'ENOENT' ? ok(Buffer.alloc(0)) : fileRefusal(error);
  } finally {
    if (handle !== null) closeSync(handle);
  }
}
