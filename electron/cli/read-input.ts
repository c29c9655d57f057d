import { readFileSync, readSync, statSync } from 'node:fs';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';

const LARGEST_BYTES = 100_000_000;

/** The text of a file, or of standard input for "-". */
export function readText(name: string): Result<string> {
  const bytes = readBytes(name);
  if (!bytes.ok) return bytes;
  try {
    return ok(new TextDecoder('utf-8', { fatal: true }).decode(bytes.value));
  } catch {
    return refuse('file-not-text', { file: name });
  }
}

/** The bytes of a file, or of standard input for "-". */
export function readBytes(name: string): Result<Buffer> {
  try {
    if (name !== '-' && statSync(name).size > LARGEST_BYTES) return refuse('file-too-large', { file: name });
    const bytes = name === '-' ? readStandardInput() : readFileSync(name);
    return bytes.length > LARGEST_BYTES ? refuse('file-too-large', { file: name }) : ok(bytes);
  } catch {
    return refuse('file-unreadable', { file: name });
  }
}

/** All of standard input. Where it is a pipe that does not wait, what is not there yet is waited for here. */
function readStandardInput(): Buffer {
  const pieces: Buffer[] = [];
  for (let bytes = 0; bytes <= LARGEST_BYTES; ) {
    const piece = Buffer.alloc(65_536);
    const read = readOrWait(piece);
    if (read === 0) break;
    bytes += read;
    pieces.push(piece.subarray(0, read));
  }
  return Buffer.concat(pieces);
}

function readOrWait(piece: Buffer): number {
  for (;;) {
    try {
      return readSync(0, piece);
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? error.code : '';
      if (code === 'EOF') return 0;
      if (code !== 'EAGAIN') throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    }
  }
}

/** The JSON value in a file or on standard input. */
export function readJson(name: string): Result<unknown> {
  const text = readText(name);
  if (!text.ok) return text;
  try {
    return ok(JSON.parse(text.value) as unknown);
  } catch {
    return refuse('file-not-json', { file: name });
  }
}
