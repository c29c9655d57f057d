/**
 * The one layout that a pack's ZIP has: stored entries, one after another without a gap, no extra fields, no comments, no data
 * descriptors, one date for all, so that the same files give the same bytes and every byte of structure can be checked.
 *
 * Source: PKWARE APPNOTE sections 4.3 and 4.4 (from memory; signatures, flags and dates seen or recomputed; compared byte for byte
 * with another writer in the tests).
 */

/** What an entry's headers are made of. */
export interface ZipFacts {
  /** UTF-8. */
  readonly name: Buffer;
  readonly size: number;
  readonly crc32: number;
}

export const LOCAL_SIGNATURE = 0x04034b50;
export const CENTRAL_SIGNATURE = 0x02014b50;
export const END_SIGNATURE = 0x06054b50;
export const LOCAL_BYTES = 30;
export const CENTRAL_BYTES = 46;
export const END_BYTES = 22;

/** Version 2.0 is needed for folders in names; made by 6.3 on Unix, so that the file mode is read as one. */
const NEEDED_VERSION = 20;
const MADE_BY = (3 << 8) | 63;
const NAMES_ARE_UTF8 = 0x0800;
const STORED = 0;
/** 1 January 1980, midnight: the earliest that a ZIP can say. */
const DOS_TIME = 0;
const DOS_DATE = 0x0021;
const FILE_MODE = 0o100644;

/** The header before an entry's bytes. */
export function localHeader({ name, size, crc32 }: ZipFacts): Buffer {
  const header = Buffer.alloc(LOCAL_BYTES);
  header.writeUInt32LE(LOCAL_SIGNATURE, 0);
  writeShared(header, 4, { name, size, crc32 });
  return Buffer.concat([header, name]);
}

/** The record of an entry in the directory at the end; `offset` is where its local header begins. */
export function centralRecord(facts: ZipFacts, offset: number): Buffer {
  const record = Buffer.alloc(CENTRAL_BYTES);
  record.writeUInt32LE(CENTRAL_SIGNATURE, 0);
  record.writeUInt16LE(MADE_BY, 4);
  writeShared(record, 6, facts);
  record.writeUInt32LE((FILE_MODE << 16) >>> 0, 38);
  record.writeUInt32LE(offset, 42);
  return Buffer.concat([record, facts.name]);
}

/** The 24 bytes that both headers have in common. */
function writeShared(header: Buffer, at: number, { name, size, crc32 }: ZipFacts): void {
  header.writeUInt16LE(NEEDED_VERSION, at);
  header.writeUInt16LE(NAMES_ARE_UTF8, at + 2);
  header.writeUInt16LE(STORED, at + 4);
  header.writeUInt16LE(DOS_TIME, at + 6);
  header.writeUInt16LE(DOS_DATE, at + 8);
  header.writeUInt32LE(crc32, at + 10);
  header.writeUInt32LE(size, at + 14);
  header.writeUInt32LE(size, at + 18);
  header.writeUInt16LE(name.length, at + 22);
}

/** The last 22 bytes. */
export function endRecord(entries: number, directoryBytes: number, directoryOffset: number): Buffer {
  const record = Buffer.alloc(END_BYTES);
  record.writeUInt32LE(END_SIGNATURE, 0);
  record.writeUInt16LE(entries, 8);
  record.writeUInt16LE(entries, 10);
  record.writeUInt32LE(directoryBytes, 12);
  record.writeUInt32LE(directoryOffset, 16);
  return record;
}
