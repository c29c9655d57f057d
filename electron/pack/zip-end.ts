import { fileFault, type Fault } from '../../shared-core/handover/check-fault.ts';
import type { ByteSource } from './byte-source.ts';
import { CENTRAL_BYTES, CENTRAL_SIGNATURE, END_BYTES, END_SIGNATURE, LOCAL_BYTES, LOCAL_SIGNATURE, localHeader } from './zip-layout.ts';

/** The end record of a ZIP that ends where it should. */
export interface ZipEnd {
  readonly entries: number;
  readonly directoryBytes: number;
  readonly directoryOffset: number;
  readonly raw: Buffer;
}

/** The end record, where the last 22 bytes are one without a comment and its directory lies before it; else null. */
export async function readZipEnd(source: ByteSource): Promise<ZipEnd | null> {
  const raw = await source.read(Math.max(0, source.size - END_BYTES), END_BYTES);
  if (raw.length < END_BYTES || raw.readUInt32LE(0) !== END_SIGNATURE || raw.readUInt16LE(20) !== 0) return null;
  return { entries: raw.readUInt16LE(10), directoryBytes: raw.readUInt32LE(12), directoryOffset: raw.readUInt32LE(16), raw };
}

/**
 * What is wrong with a file that has no end record where one should be: cut off, if everything up to its last byte is as our
 * layout has it; damaged, if not; no ZIP at all, if it does not even begin as one.
 */
export async function missingEndFault(source: ByteSource): Promise<Fault> {
  const start = await source.read(0, 4);
  const signature = Buffer.from([0x50, 0x4b, 3, 4]);
  if (!start.equals(signature.subarray(0, start.length))) return fileFault('not-a-pack', null, 'fault-not-a-zip');
  const end = await walkToEnd(source);
  if (end.kind === 'cut') return fileFault('truncated', end.path, 'fault-zip-cut', { bytes: source.size });
  return fileFault('container', end.path, 'fault-zip-bytes', { offset: end.offset });
}

type WalkEnd =
  | { readonly kind: 'cut'; readonly path: string | null }
  | { readonly kind: 'damaged'; readonly path: string | null; readonly offset: number };

/** Follows the headers from the first byte on, as far as they are in order. */
async function walkToEnd(source: ByteSource): Promise<WalkEnd> {
  let [at, path]: [number, string | null] = [0, null];
  for (;;) {
    const fixed = await source.read(at, CENTRAL_BYTES);
    if (fixed.length < 4) return { kind: 'cut', path };
    const kind = fixed.readUInt32LE(0);
    if (kind === END_SIGNATURE) return fixed.length < END_BYTES ? { kind: 'cut', path: null } : { kind: 'damaged', path: null, offset: at };
    const step = kind === LOCAL_SIGNATURE ? await localStep(source, at, fixed) : kind === CENTRAL_SIGNATURE ? centralStep(fixed) : null;
    if (step === null) return { kind: 'damaged', path: null, offset: at };
    if (step.path !== null) path = step.path;
    if (at + step.length > source.size) return { kind: 'cut', path };
    at += step.length;
  }
}

interface Step {
  readonly length: number;
  readonly path: string | null;
}

/** A local header and its bytes; null where the header is not as our layout has it, for then its size cannot be relied upon. */
async function localStep(source: ByteSource, at: number, fixed: Buffer): Promise<Step | null> {
  if (fixed.length < LOCAL_BYTES) return { length: LOCAL_BYTES, path: null };
  const nameBytes = fixed.readUInt16LE(26);
  const header = await source.read(at, LOCAL_BYTES + nameBytes);
  if (header.length < LOCAL_BYTES + nameBytes) return { length: LOCAL_BYTES + nameBytes, path: null };
  const name = header.subarray(LOCAL_BYTES);
  const size = header.readUInt32LE(22);
  if (!header.equals(localHeader({ name, size, crc32: header.readUInt32LE(14) }))) return null;
  return { length: header.length + size, path: name.toString('utf8').replace(/^[^/]*\//, '') };
}

function centralStep(fixed: Buffer): Step {
  if (fixed.length < CENTRAL_BYTES) return { length: CENTRAL_BYTES, path: null };
  return { length: CENTRAL_BYTES + fixed.readUInt16LE(28) + fixed.readUInt16LE(30) + fixed.readUInt16LE(32), path: null };
}
