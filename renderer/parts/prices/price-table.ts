import { refuse, type Result } from '../../../shared-core/result/result.ts';
import { fileBase64 } from '../../ui/file-base64.ts';

/** A price list as it was chosen or pasted; the number tells it from those before. */
export interface PriceTable {
  readonly key: number;
  readonly name: string | null;
  readonly base64: string | null;
  readonly text: string | null;
}

/** The largest list taken, in megabytes; the host refuses more. */
const MOST_MEGABYTES = 20;

let chosen = 0;

/** Reads a file; one that is too large is refused before it is read. */
export async function priceFile(file: File): Promise<Result<PriceTable>> {
  if (file.size > MOST_MEGABYTES * 1_000_000) return refuse('import-file-large');
  const base64 = await fileBase64(file);
  if (base64 === null) return refuse('file-unreadable', { name: file.name });
  chosen += 1;
  return { ok: true, value: { key: chosen, name: file.name.slice(-1000), base64, text: null } };
}

/** Takes a list that was pasted. */
export function pastedPrices(text: string): Result<PriceTable> {
  if (text.trim() === '') return refuse('nothing-pasted');
  chosen += 1;
  return { ok: true, value: { key: chosen, name: null, base64: null, text } };
}
