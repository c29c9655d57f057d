import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { PackFile } from '../../shared-core/handover/pack-files.ts';
import type { Pack } from '../../shared-core/handover/compose-pack.ts';
import { zipBytes } from '../../electron/pack/zip-write.ts';
import { bytesOf } from '../shared-core/handover/pack-fixture.ts';

/** Writes a pack's files into a folder, as unzipping would. */
export function unpackInto(folder: string, pack: Pack): void {
  for (const [path, bytes] of bytesOf(pack)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), bytes);
  }
}

/** The whole ZIP in memory. */
export async function zipOf(base: string, files: readonly PackFile[]): Promise<Buffer> {
  const pieces: Buffer[] = [];
  for await (const piece of zipBytes(base, files)) pieces.push(piece);
  return Buffer.concat(pieces);
}
