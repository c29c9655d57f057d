import { RandomAccessReader, fromRandomAccessReaderPromise, type Entry, type ZipFile } from 'yauzl';
import type { Readable } from 'node:stream';
import { addedFault, fileFault, isLeftBySystem, type Fault } from '../../shared-core/handover/check-fault.ts';
import { MOST_BYTES, MOST_FILES } from '../../shared-core/handover/compose-pack.ts';
import { BAG_DECLARATION, MANIFEST } from '../../shared-core/handover/bag.ts';
import { SIGNED_CONTENTS } from '../../shared-core/handover/pack-files.ts';
import { packPathFault, pathLikeness } from '../../shared-core/handover/pack-path.ts';
import type { ByteSource } from './byte-source.ts';
import type { StatedEntry } from './zip-audit.ts';

/** An entry that may be read. */
export interface ZipMember extends StatedEntry {
  readonly open: () => Promise<Readable>;
  /** Its bytes in place, where they are stored as they are. */
  readonly stored: boolean;
}

/** What the directory of a ZIP holds: entries that may be read, and faults of those that may not. */
export interface ZipMembers {
  /** The folder that holds the pack; empty where there is none. */
  readonly base: string;
  /** All entries in the order of the directory. */
  readonly stated: readonly StatedEntry[];
  readonly members: readonly ZipMember[];
  readonly faults: readonly Fault[];
}

/** Bytes of structure that a ZIP of the largest pack has beside its contents. */
const MOST_WITH_STRUCTURE = MOST_BYTES + MOST_FILES * 600;

/** Lets the reader take its bytes from any source, a ZIP within a ZIP included. */
class SourceReader extends RandomAccessReader {
  readonly #source: ByteSource;
  constructor(source: ByteSource) {
    super();
    this.#source = source;
  }
  override _readStreamForRange(start: number, end: number): Readable {
    return this.#source.stream(start, end);
  }
  override read(buffer: Buffer, offset: number, length: number, position: number, callback: (error: Error | null, bytesRead?: number) => void): void {
    this.#source.read(position, length).then(
      (bytes) => callback(null, bytes.copy(buffer, offset)),
      (error: unknown) => callback(error instanceof Error ? error : new Error(String(error))),
    );
  }
}

/**
 * Reads the directory of a ZIP with a reader that knows nothing of our layout, and sorts out every entry that could do harm: names
 * that lead elsewhere or collide, links, folders, encryption, sizes beyond any pack. Null with the reader's reason where it
 * cannot read the directory at all.
 */
export async function readMembers(source: ByteSource): Promise<ZipMembers | { readonly unreadable: string }> {
  try {
    const zip = await fromRandomAccessReaderPromise(new SourceReader(source), source.size, { decodeStrings: false, autoClose: false });
    if (zip.entryCount > MOST_FILES) return { unreadable: `${zip.entryCount} entries` };
    const entries: Entry[] = [];
    for await (const entry of zip.eachEntry()) entries.push(entry);
    return sortOut(zip, entries);
  } catch (error) {
    return { unreadable: error instanceof Error ? error.message : String(error) };
  }
}

function sortOut(zip: ZipFile, entries: readonly Entry[]): ZipMembers | { readonly unreadable: string } {
  const bytes = entries.reduce((sum, entry) => sum + entry.uncompressedSize, 0);
  const packed = entries.reduce((sum, entry) => sum + entry.compressedSize, 0);
  if (bytes > MOST_WITH_STRUCTURE || packed > zip.fileSize) return { unreadable: `${bytes} bytes in ${zip.fileSize}` };
  const base = commonBase(entries);
  const all = entries.map((entry) => ({ entry, stated: statedEntry(entry, base), name: nameOf(entry) }));
  const seen = new Set<string>();
  const [members, faults]: [ZipMember[], Fault[]] = [[], []];
  for (const { entry, stated, name } of all) {
    const key = entryFault(entry, name, base, seen);
    seen.add(pathLikeness(name ?? ''));
    if (key === 'fault-entry-outside' && isLeftBySystem(stated.path)) faults.push(addedFault(stated.path));
    else if (key !== null) faults.push(fileFault('container', stated.path, key));
    else members.push({ ...stated, stored: entry.compressionMethod === 0, open: () => zip.openReadStreamPromise(entry) });
  }
  return { base, stated: all.map((one) => one.stated), members, faults };
}

/** Names are taken raw (`decodeStrings: false`), whatever the types say, so that bytes that are not UTF-8 are seen. */
function rawName(entry: Entry): Buffer {
  return entry.fileNameRaw;
}

function nameOf(entry: Entry): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(rawName(entry));
  } catch {
    return null;
  }
}

function statedEntry(entry: Entry, base: string): StatedEntry {
  const name = nameOf(entry) ?? rawName(entry).toString('latin1');
  const below = isWithin(name, base) ? name.slice(base === '' ? 0 : base.length + 1) : name;
  // The folder itself has no path inside of it: it is named by its own name.
  const path = below === '' ? name : below;
  return { name: rawName(entry), path, size: entry.uncompressedSize, crc32: entry.crc32, offset: entry.relativeOffsetOfLocalHeader };
}

/**
 * The folder that most entries are in: a changed letter in one name must not move the whole pack. Empty where the pack's own files stand in
 * no folder: then the ZIP was made of what is in the folder.
 */
function commonBase(entries: readonly Entry[]): string {
  const counts = new Map<string, number>();
  const names = new Set(entries.map((entry) => nameOf(entry) ?? ''));
  for (const name of names) {
    const base = name.split('/')[0] ?? '';
    if (!isLeftBySystem(name)) counts.set(base, (counts.get(base) ?? 0) + 1);
  }
  const most = [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? '';
  const holdsPack = (folder: string) => [BAG_DECLARATION, MANIFEST, SIGNED_CONTENTS].some((path) => names.has(folder + path));
  return holdsPack('') && !holdsPack(`${most}/`) ? '' : most;
}

function isWithin(name: string, base: string): boolean {
  return base === '' ? !name.startsWith('__MACOSX/') : name.startsWith(`${base}/`);
}

const FILE_KIND = 0o170000;
const LINK = 0o120000;

/** Why an entry is not read, as the key of a sentence; null where it may be. */
function entryFault(entry: Entry, name: string | null, base: string, seen: ReadonlySet<string>): string | null {
  if (name === null) return 'fault-entry-name';
  if (((entry.externalFileAttributes >>> 16) & FILE_KIND) === LINK) return 'fault-entry-link';
  if (name.endsWith('/')) return 'fault-entry-folder';
  if (packPathFault(name) !== null) return 'fault-entry-name';
  if (!isWithin(name, base)) return 'fault-entry-outside';
  if (seen.has(pathLikeness(name))) return 'fault-entry-twice';
  if (entry.isEncrypted()) return 'fault-entry-encrypted';
  return entry.compressionMethod === 0 || entry.compressionMethod === 8 ? null : 'fault-entry-compression';
}
