import { fileFault, type Fault } from '../../shared-core/handover/check-fault.ts';
import type { ByteSource } from './byte-source.ts';
import type { ZipEnd } from './zip-end.ts';
import { CENTRAL_BYTES, centralRecord, endRecord, LOCAL_BYTES, localHeader, type ZipFacts } from './zip-layout.ts';

/** An entry as the directory at the end of the ZIP states it. */
export interface StatedEntry extends ZipFacts {
  /** Its path inside the pack. */
  readonly path: string;
  /** Where it says that the local header is. */
  readonly offset: number;
}

/** A longer name than any pack has was read from bytes that are no name. */
const LONGEST_NAME = 300;

/**
 * Compares every byte of a ZIP that is not contents with what the layout prescribes for its entries: local headers, directory, end
 * record, and that nothing lies between or behind them. One fault an entry, naming the first byte that differs; one for all
 * where the whole ZIP was written anew by another program.
 */
export async function auditZip(source: ByteSource, end: ZipEnd, entries: readonly StatedEntry[]): Promise<Fault[]> {
  const bodies = await auditBodies(source, end, entries);
  const records = await auditDirectory(source, end, entries, bodies.offsets);
  const endFaults = end.raw.equals(endRecord(entries.length, records.end - bodies.end, bodies.end)) && records.end + end.raw.length === source.size
    ? []
    : [fileFault('container', null, 'fault-zip-bytes', { offset: records.end })];
  // One slip never alters every record: another program wrote them.
  if (entries.length > 1 && records.faults.length === entries.length) return [fileFault('container', null, 'fault-zip-anew')];
  return oneEach([...bodies.faults, ...records.faults, ...endFaults]);
}

/** The local headers; `offsets` is where each was found, `end` where the last entry's bytes end. */
async function auditBodies(source: ByteSource, end: ZipEnd, entries: readonly StatedEntry[]): Promise<{ faults: Fault[]; offsets: number[]; end: number }> {
  const [faults, offsets]: [Fault[], number[]] = [[], []];
  let at = 0;
  for (const [index, entry] of entries.entries()) {
    const expected = localHeader(entry);
    const found = await source.read(at, expected.length);
    offsets.push(at);
    const differs = firstDifference(expected, found);
    if (differs !== null) faults.push(...(await headerFaults(source, entry, at, differs)));
    const next = at + expected.length + entry.size;
    // Where this header differs, its own size may be what is wrong: go on from where the next one is stated to be.
    at = differs === null ? next : (entries[index + 1]?.offset ?? end.directoryOffset);
  }
  return { faults, offsets, end: at };
}

/** A header that gives another name than the directory is a fault of both names. */
async function headerFaults(source: ByteSource, entry: StatedEntry, at: number, differs: number): Promise<Fault[]> {
  const fixed = await source.read(at, LOCAL_BYTES);
  const name = fixed.length === LOCAL_BYTES ? (await source.read(at + LOCAL_BYTES, fixed.readUInt16LE(26))).toString('utf8') : '';
  const paths = new Set([entry.path, name.length <= LONGEST_NAME ? name.replace(/^[^/]*\//, '') : '']);
  return [...paths].filter((path) => path !== '').map((path) => fileFault('container', path, 'fault-zip-bytes', { offset: at + differs }));
}

async function auditDirectory(source: ByteSource, end: ZipEnd, entries: readonly StatedEntry[], offsets: readonly number[]): Promise<{ faults: Fault[]; end: number }> {
  const faults: Fault[] = [];
  let at = end.directoryOffset;
  for (const [index, entry] of entries.entries()) {
    const expected = centralRecord(entry, offsets[index] ?? 0);
    const found = await source.read(at, expected.length);
    const differs = firstDifference(expected, found);
    if (differs !== null) faults.push(fileFault('container', entry.path, 'fault-zip-bytes', { offset: at + differs }));
    at += found.length < CENTRAL_BYTES ? found.length : CENTRAL_BYTES + found.readUInt16LE(28) + found.readUInt16LE(30) + found.readUInt16LE(32);
  }
  return { faults, end: at };
}

function firstDifference(expected: Buffer, found: Buffer): number | null {
  if (expected.equals(found)) return null;
  const at = expected.findIndex((byte, index) => byte !== found[index]);
  return at < 0 ? expected.length : at;
}

/** The first fault of each path. */
function oneEach(faults: readonly Fault[]): Fault[] {
  const first = new Map([...faults].reverse().map((fault) => [fault.path, fault]));
  return faults.filter((fault) => first.get(fault.path) === fault);
}
