import type { ReplyOf } from '../../shared-core/contract/contract.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { fileBase64 } from '../ui/file-base64.ts';
import { runLong } from '../ui/run-long.ts';

/** The largest file taken, in bytes; the host refuses more. */
const LARGEST_HANDED_BYTES = 100_000_000;
const PIECE_BYTES = 4_500_000;

/** Hands a file over to the host in pieces; answers the id under which it is held. `onPart` hears how much of it has gone. */
export async function handFile(file: File, onPart: (share: number) => void): Promise<Result<string>> {
  if (file.size > LARGEST_HANDED_BYTES) return refuse('handed-too-large');
  if (file.size === 0) return refuse('pack-empty');
  const handed = crypto.randomUUID();
  for (let from = 0; from < file.size; from += PIECE_BYTES) {
    onPart(from / file.size);
    const base64 = await fileBase64(new File([file.slice(from, from + PIECE_BYTES)], 'piece'));
    if (base64 === null) return refuse('file-unreadable', { name: file.name });
    const taken: Result<ReplyOf<'pack.hand'>> = await runLong('pack.hand', { handed, from, base64 });
    if (!taken.ok) return taken;
  }
  return ok(handed);
}
