import { lstatSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** A file found, or why what stands there is not taken. */
export interface FoundFile {
  readonly path: string;
  readonly refused: 'link' | 'no-file' | 'missing' | 'too-many' | null;
}

/** The most files of one call: a folder named by mistake must not be walked for ever. */
const MOST_FILES = 20_000;

/** The files that paths name, folders walked in order of name. No link is followed, and what begins with a point in a folder is passed over. */
export function walkFiles(paths: readonly string[]): readonly FoundFile[] {
  const found: FoundFile[] = [];
  for (const path of paths) walk(path, found);
  return found;
}

function walk(path: string, found: FoundFile[]): void {
  if (found.length >= MOST_FILES) {
    if (found.at(-1)?.refused !== 'too-many') found.push({ path, refused: 'too-many' });
    return;
  }
  try {
    const there = lstatSync(path);
    if (there.isSymbolicLink()) return void found.push({ path, refused: 'link' });
    if (there.isFile()) return void found.push({ path, refused: null });
    if (!there.isDirectory()) return void found.push({ path, refused: 'no-file' });
    for (const name of readdirSync(path).sort()) if (!name.startsWith('.')) walk(join(path, name), found);
  } catch {
    found.push({ path, refused: 'missing' });
  }
}
