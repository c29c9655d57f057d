import { mkdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * Makes a folder and those above it that are missing, one at a time: the runtime's own recursive way never ends where the
 * system answers that a folder cannot be there (as under /proc). File-system errors are thrown.
 */
export function makeFolder(path: string, mode = 0o777): void {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found?.isDirectory() === true) return;
  if (found !== undefined) throw Object.assign(new Error(`ENOTDIR: a file stands at ${path}`), { code: 'ENOTDIR', syscall: 'mkdir' });
  const above = dirname(path);
  if (above !== path) makeFolder(above, mode);
  try {
    mkdirSync(path, { mode });
  } catch (error) {
    // Another process may have made it in between.
    if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
  }
}
