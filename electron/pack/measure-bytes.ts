import { createHash } from 'node:crypto';
import { open } from 'node:fs/promises';
import type { Readable } from 'node:stream';
import { crc32 } from 'node:zlib';
import type { PackFile } from '../../shared-core/handover/pack-files.ts';

/** What is known of bytes once they have been streamed past. */
export interface Measured {
  readonly size: number;
  /** Hexadecimal digests. */
  readonly sha256: string;
  readonly sha512: string;
  readonly crc32: number;
  /** The bytes themselves where they were to be kept and were not more than `keepUpTo`. */
  readonly bytes: Buffer | null;
}

/** Streams bytes once and measures them; keeps them only up to a size (0: not at all). */
export async function measureBytes(stream: Readable, keepUpTo: number): Promise<Measured> {
  const [sha256, sha512] = [createHash('sha256'), createHash('sha512')];
  let [size, crc, kept]: [number, number, Buffer[]] = [0, 0, []];
  for await (const chunk of stream) {
    const bytes = chunk as Buffer;
    sha256.update(bytes);
    sha512.update(bytes);
    crc = crc32(bytes, crc);
    size += bytes.length;
    if (size <= keepUpTo) kept.push(bytes);
    else kept = [];
  }
  return { size, sha256: sha256.digest('hex'), sha512: sha512.digest('hex'), crc32: crc, bytes: size <= keepUpTo && keepUpTo > 0 ? Buffer.concat(kept) : null };
}

/** A file on disk as a file of a pack, to be streamed from there when the pack is written. */
export async function diskFile(path: string, source: string): Promise<PackFile> {
  const file = await open(source, 'r');
  try {
    const { size, sha256, sha512, crc32: crc } = await measureBytes(file.createReadStream({ autoClose: false }), 0);
    return { path, size, sha256, sha512, content: { kind: 'source', source, crc32: crc } };
  } finally {
    await file.close();
  }
}
