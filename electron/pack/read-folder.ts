import { constants, type Dirent } from 'node:fs';
import { open, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { fileFault, type Fault } from '../../shared-core/handover/check-fault.ts';
import { MOST_FILES } from '../../shared-core/handover/compose-pack.ts';
import type { FoundSource } from './found-source.ts';

/** An unpacked pack as found. */
export interface FolderPack {
  readonly sources: readonly FoundSource[];
  readonly faults: readonly Fault[];
}

/**
 * Lists the files of an unpacked pack. Links and other things that are no plain files are never followed or opened, but
 * named, and so are names that are not UTF-8.
 */
export async function readFolder(folder: string): Promise<FolderPack> {
  const [sources, faults]: [FoundSource[], Fault[]] = [[], []];
  const waiting = [''];
  for (let below = waiting.pop(); below !== undefined; below = waiting.pop()) {
    for (const entry of await readdir(join(folder, below), { withFileTypes: true, encoding: 'buffer' })) {
      const name = nameOf(entry);
      const path = below + (name ?? Buffer.from(entry.name).toString('latin1'));
      const key = entryFault(entry, name);
      if (key !== null) faults.push(fileFault('container', path, key));
      else if (entry.isDirectory()) waiting.push(`${path}/`);
      else sources.push({ path, open: () => openFile(join(folder, path)), statedCrc32: null, within: null });
    }
    if (sources.length > MOST_FILES) return { sources: [], faults: [fileFault('container', null, 'fault-folder-too-large')] };
  }
  return { sources: sources.sort((a, b) => (a.path < b.path ? -1 : 1)), faults };
}

function nameOf(entry: Dirent<Buffer>): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(entry.name);
  } catch {
    return null;
  }
}

function entryFault(entry: Dirent<Buffer>, name: string | null): string | null {
  if (name === null) return 'fault-entry-name';
  if (entry.isSymbolicLink()) return 'fault-entry-link';
  return entry.isFile() || entry.isDirectory() ? null : 'fault-entry-special';
}

/** Not through a link, should one have been put there since the folder was listed. */
async function openFile(path: string): Promise<Readable> {
  return (await open(path, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0))).createReadStream();
}
