import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { lookSchema, type Look } from '../../shared-core/contract/look.ts';
import { makeFolder } from './make-folder.ts';

const FILE = 'look.json';

/** The look that was chosen; as the computer asks for it where none was, or none that can be understood. */
export function readLook(home: string): Look {
  try {
    const parsed = lookSchema.safeParse(JSON.parse(readFileSync(join(home, FILE), 'utf8')));
    return parsed.success ? parsed.data : 'system';
  } catch {
    return 'system';
  }
}

/** Keeps a look: written whole beside its file, then put in its place, so that it is never half a file. Under an open sample the folder may not be there yet. */
export function writeLook(home: string, look: Look): void {
  makeFolder(home, 0o700);
  const draft = join(home, `${FILE}.draft`);
  writeFileSync(draft, `${JSON.stringify(look)}\n`, { mode: 0o600 });
  renameSync(draft, join(home, FILE));
}
