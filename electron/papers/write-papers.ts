import { randomUUID, webcrypto } from 'node:crypto';
import { closeSync, existsSync, fsync, mkdirSync, openSync, readFileSync, renameSync, unlinkSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { promisify } from 'node:util';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { ok, type Result } from '../../shared-core/result/result.ts';
import { fileRefusal } from '../host/file-refusal.ts';
import { sha256 } from '../host/node-digests.ts';
import { paperPath } from './write-paper.ts';

const untilOnDisk = promisify(fsync);

/** A file that is written and not yet named. */
interface Unfinished {
  readonly path: string;
  readonly part: string;
  readonly file: number;
}

/**
 * Writes the bytes of several papers as `writePaper` writes those of one, and waits for the disk once for all of them: bytes first, then names,
 * then the folders that hold the names. Answers the digest of each, or why it is not there; one that fails leaves nothing and stops no other.
 */
export async function writePapers(folder: string, papers: readonly Uint8Array[]): Promise<readonly Result<string>[]> {
  // On as many cores as there are: over a thousand photographs this is half of the work.
  const ids = await Promise.all(papers.map(async (bytes) => hexText(new Uint8Array(await webcrypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>)))));
  const failed = new Map<string, unknown>();
  const begun = new Map<string, Unfinished>();
  for (const [at, id] of ids.entries()) {
    if (begun.has(id) || failed.has(id) || isThere(paperPath(folder, id), id)) continue;
    orFails(failed, id, () => begun.set(id, begin(paperPath(folder, id), papers[at] ?? new Uint8Array())));
  }
  await Promise.all([...begun].map(async ([id, one]) => {
    await untilOnDisk(one.file).catch((error: unknown) => failed.set(id, error));
    orFails(failed, id, () => closeSync(one.file));
  }));
  for (const [id, { part, path }] of begun) if (!failed.has(id)) orFails(failed, id, () => renameSync(part, path));
  for (const [id, { part }] of begun) if (failed.has(id) && existsSync(part)) orFails(failed, id, () => unlinkSync(part));
  await syncFolders([...begun.values()].map((one) => dirname(one.path)), (error, above) => {
    for (const [id, { path }] of begun) if (dirname(path) === above || dirname(dirname(path)) === above) failed.set(id, error);
  });
  return ids.map((id) => (failed.has(id) ? fileRefusal(failed.get(id)) : ok(id)));
}

function isThere(path: string, id: string): boolean {
  return existsSync(path) && hexText(sha256(readFileSync(path))) === id;
}

function orFails(failed: Map<string, unknown>, id: string, work: () => void): void {
  try {
    work();
  } catch (error) {
    failed.set(id, error);
  }
}

function begin(path: string, bytes: Uint8Array): Unfinished {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const part = `${path}.${randomUUID()}.part`;
  const file = openSync(part, 'wx', 0o600);
  try {
    for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at);
  } catch (error) {
    closeSync(file);
    unlinkSync(part);
    throw error;
  }
  return { path, part, file };
}

/** A rename is sure only when its folder is on disk; Windows cannot open a folder and does without. */
async function syncFolders(folders: readonly string[], fails: (error: unknown, folder: string) => void): Promise<void> {
  if (process.platform === 'win32') return;
  for (const one of new Set([...folders, ...folders.map((folder) => dirname(folder))])) {
    try {
      const handle = openSync(one, 'r');
      await untilOnDisk(handle).finally(() => closeSync(handle));
    } catch (error) {
      fails(error, one);
    }
  }
}
