import { closeSync, ftruncateSync, openSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import { LARGEST_HANDED_BYTES } from '../../../shared-core/handover/handover-schemas.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import type { PackCheckView } from '../../../shared-core/views/pack-check-view.ts';
import { fileRefusal } from '../file-refusal.ts';
import { newHandedFolder } from '../handed-folders.ts';
import type { HostContext } from '../host-context.ts';
import { checkHistoryPack } from './check-history-pack.ts';
import { takeInHistoryPack } from './take-in-history-pack.ts';

/** A pack that a page hands over: a file of ours, whose place no page names or learns. */
interface Handed {
  readonly id: string;
  readonly folder: string;
  readonly path: string;
  readonly bytes: number;
}

/** One for each host; the next one takes its place. */
const handed = new WeakMap<HostContext, Handed>();

/** What is to be gone when the program ends. */
const folders = new Set<string>();

interface Piece {
  readonly handed: string;
  readonly from: number;
  readonly base64: string;
}

/** Takes the next piece of a pack; the first one begins it anew. Refused `handed-gone` for a piece out of turn. */
export function handPack(context: HostContext, { handed: id, from, base64 }: Piece): Result<{ bytes: number }> {
  try {
    const held = from === 0 ? begin(context, id) : handed.get(context);
    if (held?.id !== id || held.bytes !== from) return refuse('handed-gone');
    const piece = Buffer.from(base64, 'base64');
    const bytes = from + piece.length;
    if (bytes > LARGEST_HANDED_BYTES) return refuse('handed-too-large');
    const file = openSync(held.path, 'r+');
    try {
      for (let at = 0; at < piece.length; ) at += writeSync(file, piece, at, piece.length - at, from + at);
      ftruncateSync(file, bytes);
    } finally {
      closeSync(file);
    }
    handed.set(context, { ...held, bytes });
    return ok({ bytes });
  } catch (error) {
    return fileRefusal(error);
  }
}

function begin(context: HostContext, id: string): Handed {
  drop(context);
  const folder = newHandedFolder();
  const held = { id, folder, path: join(folder, 'pack.zip'), bytes: 0 };
  closeSync(openSync(held.path, 'wx', 0o600));
  if (folders.size === 0) process.once('exit', () => folders.forEach((one) => rmSync(one, { recursive: true, force: true })));
  folders.add(folder);
  handed.set(context, held);
  return held;
}

function drop(context: HostContext): void {
  const held = handed.get(context);
  handed.delete(context);
  if (held !== undefined) rmSync(held.folder, { recursive: true, force: true });
}

/** Checks the pack that was handed over. */
export function checkHanded(context: HostContext, { handed: id, seal }: { readonly handed: string; readonly seal: string | null }): Promise<Result<PackCheckView>> {
  const held = handed.get(context);
  return held?.id === id ? checkHistoryPack(context, { pack: held.path, seal }) : Promise.resolve(refuse('handed-gone'));
}

/** Takes in the pack that was handed over; then it is held no longer. */
export async function takeInHanded(context: HostContext, { handed: id, seal, sample }: { readonly handed: string; readonly seal: string | null; readonly sample: boolean }): Promise<Result<ReplyOf<'pack.take-in'>>> {
  const held = handed.get(context);
  if (held?.id !== id) return refuse('handed-gone');
  const taken = await takeInHistoryPack(context, { pack: held.path, seal, sample });
  if (taken.ok) drop(context);
  return taken;
}
