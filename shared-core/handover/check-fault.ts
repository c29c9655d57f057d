import type { Message, MessageValues } from '../result/result.ts';
import { PAYLOAD } from './bag.ts';
import { HISTORY, JOURNAL } from './pack-files.ts';

/** What can be wrong with a pack. */
export type FaultCode =
  | 'missing'
  | 'added'
  | 'changed'
  | 'renamed'
  | 'reordered'
  | 'truncated'
  | 'container'
  | 'wrong-root'
  | 'wrong-proof'
  | 'bad-signature'
  | 'wrong-date'
  | 'not-a-pack';

/**
 * One fault of a pack: what kind, in which file (a path inside the pack), at which row of the journal, and the sentence's key
 * and values.
 */
export interface Fault {
  readonly code: FaultCode;
  readonly path: string | null;
  readonly row: number | null;
  readonly message: Message;
}

/** A fault of a file, or of the whole where there is no path. @example fileFault('missing', 'data/a.txt', 'fault-file-missing') */
export function fileFault(code: FaultCode, path: string | null, key: string, values: MessageValues = {}): Fault {
  return { code, path, row: null, message: { key, values: printable({ path, ...values }) } };
}

/** A fault at a row of the journal, in the file that shows the row. */
export function rowFault(code: FaultCode, path: string, row: number, key: string, values: MessageValues = {}): Fault {
  return { code, path, row, message: { key, values: printable({ path, row, ...values }) } };
}

/** Names in a stranger's file may hold characters that command a terminal or turn the line round: they are not passed on to be printed. */
function printable(values: MessageValues): MessageValues {
  return Object.fromEntries(Object.entries(values).map(([name, value]) => [name, typeof value === 'string' ? value.replaceAll(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/gu, '\ufffd') : value]));
}

/** A file of a pack as it was found. */
export interface FoundFile {
  readonly path: string;
  readonly size: number;
  /** Hexadecimal digests. */
  readonly sha256: string;
  readonly sha512: string;
  /** The bytes of a file that is read and not only measured (`isRead`); null for others. */
  readonly bytes: Uint8Array | null;
  /** Those bytes as text; null where they are not UTF-8. */
  readonly text: string | null;
}

/** Whether checking reads a file's contents: the bag's own files, and what our programs read. */
export function isRead(path: string): boolean {
  return !path.startsWith(PAYLOAD) || path === HISTORY || path.startsWith(JOURNAL);
}

/** Files by their path. */
export function byPath(files: readonly FoundFile[]): ReadonlyMap<string, FoundFile> {
  return new Map(files.map((file) => [file.path, file]));
}

const LEFT_BY_SYSTEMS = new Set(['.DS_Store', 'Thumbs.db', 'desktop.ini', '.directory']);

/** Whether a file is one that operating systems leave in folders and ZIPs by themselves. @example isLeftBySystem('data/.DS_Store') //=> true */
export function isLeftBySystem(path: string): boolean {
  const names = path.split('/');
  const name = names.at(-1) ?? '';
  return names[0] === '__MACOSX' || LEFT_BY_SYSTEMS.has(name) || name.startsWith('._');
}

/** A file that is no part of the pack. */
export function addedFault(path: string): Fault {
  return fileFault('added', path, isLeftBySystem(path) ? 'fault-file-added-by-system' : 'fault-file-added');
}
