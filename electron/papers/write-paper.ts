import { randomUUID } from 'node:crypto';
import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, readFileSync, renameSync, unlinkSync, writeSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { sha256 } from '../host/node-digests.ts';

/** Where a paper stands in a household's folder. @example paperPath('/home', 'ab12...') //=> '/home/papers/ab/ab12...' */
export function paperPath(folder: string, id: string): string {
  return join(folder, 'papers', id.slice(0, 2), id);
}

/**
 * Writes a paper's bytes under their digest, whole or not at all: a new file, synced, renamed, its folder synced.
 * A paper that is there already is not written again. Answers the digest. File-system errors are thrown.
 */
export function writePaper(folder: string, bytes: Uint8Array): string {
  const id = hexText(sha256(bytes));
  const path = paperPath(folder, id);
  if (existsSync(path) && hexText(sha256(readFileSync(path))) === id) return id;
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const unfinished = `${path}.${randomUUID()}.part`;
  try {
    writeWhole(unfinished, bytes);
    renameSync(unfinished, path);
  } catch (error) {
    if (existsSync(unfinished)) unlinkSync(unfinished);
    throw error;
  }
  syncFolder(dirname(path));
  syncFolder(dirname(dirname(path)));
  return id;
}

function writeWhole(path: string, bytes: Uint8Array): void {
  const file = openSync(path, 'wx', 0o600);
  try {
    for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** A rename is sure only when its folder is on disk; Windows cannot open a folder and does without. */
function syncFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
