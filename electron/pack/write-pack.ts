import { randomBytes } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { link, open, rename, rm, type FileHandle } from 'node:fs/promises';
import { join } from 'node:path';
import type { Pack } from '../../shared-core/handover/compose-pack.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { measureBytes } from './measure-bytes.ts';
import { FileChangedError, zipBytes } from './zip-write.ts';

/**
 * Writes a pack as one ZIP into a folder, whole or not at all, and answers its path. Where the very same pack is there already, it
 * stays. Refused `pack-exists` where another of that name is there, `paper-changed` where a file on disk is no longer what was
 * measured, `pack-not-written` where the folder cannot take it.
 */
export async function writePack(pack: Pack, folder: string): Promise<Result<string>> {
  const path = join(folder, `${pack.name}.zip`);
  const draft = join(folder, `.${pack.name}.${randomBytes(6).toString('hex')}.part`);
  try {
    await writeDraft(pack, draft);
    if (!(await putInPlace(draft, path))) return refuse('pack-exists', { path });
    return ok(path);
  } catch (error) {
    if (error instanceof FileChangedError) return refuse('paper-changed', { path: error.source });
    return refuse('pack-not-written', { path, why: reason(error) });
  } finally {
    await rm(draft, { force: true });
  }
}

async function writeDraft(pack: Pack, draft: string): Promise<void> {
  const file = await open(draft, 'wx');
  try {
    await writeAll(file, zipBytes(pack.name, pack.files));
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Small pieces are gathered, so that a pack of many small files is not as many writes. */
async function writeAll(file: FileHandle, pieces: AsyncIterable<Buffer>): Promise<void> {
  let [held, bytes]: [Buffer[], number] = [[], 0];
  for await (const piece of pieces) {
    held.push(piece);
    bytes += piece.length;
    if (bytes < 1_000_000) continue;
    await file.writeFile(Buffer.concat(held));
    [held, bytes] = [[], 0];
  }
  await file.writeFile(Buffer.concat(held));
}

/** Gives the draft its name unless another file has it; whether that name now holds these bytes. */
async function putInPlace(draft: string, path: string): Promise<boolean> {
  try {
    await link(draft, path);
    return true;
  } catch (error) {
    if (reason(error) === 'EEXIST') return isSame(draft, path);
    if (!['EPERM', 'ENOTSUP', 'ENOSYS', 'EOPNOTSUPP'].includes(reason(error))) throw error;
    // A disk without hard links: look, then rename.
    if (await exists(path)) return isSame(draft, path);
    await rename(draft, path);
    return true;
  }
}

async function isSame(a: string, b: string): Promise<boolean> {
  const [one, other] = [await measureBytes(createReadStream(a), 0), await measureBytes(createReadStream(b), 0)];
  return one.sha512 === other.sha512;
}

async function exists(path: string): Promise<boolean> {
  try {
    await (await open(path, 'r')).close();
    return true;
  } catch (error) {
    if (reason(error) === 'ENOENT') return false;
    throw error;
  }
}

function reason(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : String(error);
}
