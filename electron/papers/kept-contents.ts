import { randomUUID } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { paperContentsSchema, type PaperContents } from '../../shared-core/records/paper-contents.ts';
import { sha256 } from '../host/node-digests.ts';
import type { MadeContents } from './make-contents.ts';

/** Where what was derived of papers is kept, in a household's folder. */
export const THUMBNAILS = 'thumbnails';

function placeOf(folder: string, id: string, ending: 'webp' | 'json'): string {
  return join(folder, THUMBNAILS, id.slice(0, 2), `${id}.${ending}`);
}

/** What was derived of a paper before; null where it is missing, of an older version or not as it was written. */
export function keptContents(folder: string, id: string): PaperContents | null {
  try {
    const read = paperContentsSchema.safeParse(JSON.parse(readFileSync(placeOf(folder, id, 'json'), 'utf8')));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/** The thumbnail made before; null where it is missing or not the one that was made. */
export function keptThumbnail(folder: string, id: string, digest: string): Uint8Array | null {
  try {
    const bytes = readFileSync(placeOf(folder, id, 'webp'));
    return hexText(sha256(bytes)) === digest ? bytes : null;
  } catch {
    return null;
  }
}

/** Keeps what was derived. A full disk, or a household that has gone meanwhile, loses nothing: it is derived again. */
export function keepContents(folder: string, id: string, { contents, thumbnail }: MadeContents): void {
  try {
    // Never the household's own folder: one that was deleted meanwhile must not come back.
    for (const place of [join(folder, THUMBNAILS), dirname(placeOf(folder, id, 'json'))]) makeIn(place);
    if (thumbnail !== null) writeWhole(placeOf(folder, id, 'webp'), thumbnail);
    writeWhole(placeOf(folder, id, 'json'), JSON.stringify(contents));
  } catch {
    return;
  }
}

/** Makes a folder in one that is there. */
export function makeIn(place: string): void {
  try {
    mkdirSync(place, { mode: 0o700 });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
}

/** Writes a derived file whole or not at all. File-system errors are thrown. */
export function writeWhole(path: string, data: Uint8Array | string): void {
  const unfinished = `${path}.${randomUUID()}.part`;
  try {
    writeFileSync(unfinished, data, { flag: 'wx', mode: 0o600 });
    renameSync(unfinished, path);
  } catch (error) {
    rmSync(unfinished, { force: true });
    throw error;
  }
}
