import { Readable } from 'node:stream';
import type { FileHandle } from 'node:fs/promises';

/** A run of bytes that can be read at any place: a file, or a file within a file. */
export interface ByteSource {
  readonly size: number;
  /** Bytes from `at`; fewer than `length` only at the end. */
  readonly read: (at: number, length: number) => Promise<Buffer>;
  readonly stream: (start: number, end: number) => Readable;
  /** The bytes from `start` up to `end` as a source of their own. */
  readonly part: (start: number, end: number) => ByteSource;
}

/** The bytes of an open file, from `start` up to `end`; the file stays open and is the caller's to close. */
export function fileSource(file: FileHandle, start: number, end: number): ByteSource {
  return {
    size: end - start,
    read: (at, length) => readFully(file, start + at, Math.max(0, Math.min(length, end - start - at))),
    stream: (from, to) => Readable.from(pieces(file, start + from, Math.min(end, start + to)), { objectMode: false }),
    part: (from, to) => fileSource(file, start + from, Math.min(end, start + to)),
  };
}

const PIECE = 256 * 1024;

/** Bytes of an open file piece by piece; unlike the platform's stream it never closes the file, which may serve several. */
async function* pieces(file: FileHandle, from: number, to: number): AsyncGenerator<Buffer> {
  for (let at = from; at < to; ) {
    const piece = await readFully(file, at, Math.min(PIECE, to - at));
    if (piece.length === 0) return;
    yield piece;
    at += piece.length;
  }
}

async function readFully(file: FileHandle, at: number, length: number): Promise<Buffer> {
  const bytes = Buffer.alloc(length);
  let done = 0;
  while (done < length) {
    const { bytesRead } = await file.read(bytes, done, length - done, at + done);
    if (bytesRead === 0) break;
    done += bytesRead;
  }
  return bytes.subarray(0, done);
}
