import { fileFault, isRead, type Fault, type FoundFile } from '../../shared-core/handover/check-fault.ts';
import type { FoundSource } from './found-source.ts';
import { measureBytes } from './measure-bytes.ts';

/** Files that are read as text are taken up to this size; a pack of ours has none near it. */
const LONGEST_TEXT = 64_000_000;

/** What streaming the files of a pack came to. */
export interface FoundFiles {
  readonly found: readonly FoundFile[];
  /** Files that could not be read. */
  readonly faults: readonly Fault[];
  /** Files whose bytes have another CRC-32 than the container states. */
  readonly crcFaults: readonly Fault[];
}

/** Streams every file of a pack once, one after another, and measures it. */
export async function readFound(sources: readonly FoundSource[]): Promise<FoundFiles> {
  const [found, faults, crcFaults]: [FoundFile[], Fault[], Fault[]] = [[], [], []];
  for (const source of sources) {
    const file = await foundFile(source);
    if ('fault' in file) faults.push(file.fault);
    else {
      found.push(file.found);
      if (source.statedCrc32 !== null && source.statedCrc32 !== file.crc32) crcFaults.push(fileFault('container', source.path, 'fault-zip-crc'));
    }
  }
  return { found, faults, crcFaults };
}

async function foundFile(source: FoundSource): Promise<{ readonly found: FoundFile; readonly crc32: number } | { readonly fault: Fault }> {
  try {
    const { size, sha256: digest, sha512, crc32, bytes } = await measureBytes(await source.open(), isRead(source.path) ? LONGEST_TEXT : 0);
    if (isRead(source.path) && bytes === null) return { fault: fileFault('not-a-pack', source.path, 'fault-file-too-large', { size }) };
    return { found: { path: source.path, size, sha256: digest, sha512, bytes, text: textOf(bytes) }, crc32 };
  } catch (error) {
    return { fault: fileFault('container', source.path, 'fault-entry-unreadable', { why: error instanceof Error ? error.message : String(error) }) };
  }
}

/** The text with its byte order mark, should it have one; null where the bytes are not UTF-8. */
function textOf(bytes: Buffer | null): string | null {
  try {
    return bytes === null ? null : new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}
