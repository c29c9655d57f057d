import { lstatSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The folders of packs that pages hand over, each with the id of the process that made it. */
const NAME = /^trunnion-handed-(?:(\d+)-)?[A-Za-z0-9]{6}$/;
const DAY_MS = 86_400_000;

/** Makes a folder of our own for a pack that a page hands over. */
export function newHandedFolder(): string {
  return mkdtempSync(join(tmpdir(), `trunnion-handed-${process.pid}-`));
}

/**
 * Removes folders of handed-over packs that a killed program left behind: older than a day, of this user, and of no process that still runs.
 * What cannot be removed is left for another start; nothing else in the folder for temporary files is touched.
 */
export function sweepHandedFolders(now = Date.now(), within = tmpdir()): void {
  for (const name of namesIn(within)) {
    const match = NAME.exec(name);
    if (match === null) continue;
    const path = join(within, name);
    try {
      const found = lstatSync(path);
      const isOurs = found.isDirectory() && (process.getuid === undefined || found.uid === process.getuid());
      if (isOurs && now - found.mtimeMs > DAY_MS && !isRunning(match[1])) rmSync(path, { recursive: true, force: true });
    } catch {
      // Another program's sweep may have been here first.
    }
  }
}

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

function isRunning(id: string | undefined): boolean {
  if (id === undefined) return false;
  try {
    process.kill(Number(id), 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
