import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { fileBase64 } from '../../ui/file-base64.ts';
import type { ChosenTable } from './table-draft.ts';

/** The largest table taken, in megabytes; the host refuses more. */
const MOST_MEGABYTES = 20;

let chosen = 0;

/** Reads the file that was chosen or dropped; one that is too large is refused before it is read. */
export async function readTableFiles(files: readonly File[]): Promise<Result<ChosenTable>> {
  const [file, second] = files;
  if (file === undefined) return refuse('file-none');
  if (second !== undefined) return refuse('one-table');
  if (file.size > MOST_MEGABYTES * 1_000_000) return refuse('import-file-large');
  const base64 = await fileBase64(file);
  if (base64 === null) return refuse('file-unreadable', { name: file.name });
  return ok({ key: nextKey(), name: file.name.slice(-1000), bytes: file.size, base64, text: null });
}

/** Takes a table that was pasted. */
export function pastedTable(text: string): Result<ChosenTable> {
  if (text.trim() === '') return refuse('nothing-pasted');
  return ok({ key: nextKey(), name: null, bytes: new Blob([text]).size, base64: null, text });
}

function nextKey(): number {
  chosen += 1;
  return chosen;
}
