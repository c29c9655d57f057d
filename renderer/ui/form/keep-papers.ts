import { refuse, type Result } from '../../../shared-core/result/result.ts';
import { change } from '../change.ts';
import { fileBase64 } from '../file-base64.ts';

/** The largest file taken, in bytes; the host refuses more. */
const LARGEST_BYTES = 25_000_000;
const LONGEST_NAME = 120;

/**
 * Keeps files as papers, then sends what refers to them; the undo of both is one. Where the second is refused the papers
 * are withdrawn again, so that nothing is half-saved.
 */
export async function withPapers<Reply extends { readonly undo: readonly number[] }>(
  files: readonly File[],
  send: (papers: string[]) => Promise<Result<Reply>>,
): Promise<Result<Reply>> {
  const kept: string[] = [];
  const undo: number[] = [];
  for (const file of files) {
    const paper = await keepOnePaper(file);
    if (!paper.ok) {
      await takeBack(undo);
      return paper;
    }
    kept.push(paper.value.paper.id);
    undo.push(...paper.value.undo);
  }
  const result = await send([...new Set(kept)]);
  if (result.ok) return { ok: true, value: { ...result.value, undo: [...undo, ...result.value.undo] } };
  await takeBack(undo);
  return result;
}

/** Keeps one file. A refusal of it is shown at the field for papers, whatever its own field is called. */
export async function keepOnePaper(file: File) {
  const at = ['papers'];
  if (file.size === 0) return refuse('file-empty', { name: file.name }, at);
  if (file.size > LARGEST_BYTES) return refuse('file-too-large', { name: file.name }, at);
  const base64 = await fileBase64(file);
  if (base64 === null) return refuse('file-unreadable', { name: file.name }, at);
  const result = await change('paper.keep', { name: file.name.slice(-LONGEST_NAME), base64 });
  return result.ok ? result : ({ ok: false, refusal: { ...result.refusal, path: at } } as const);
}

async function takeBack(entries: readonly number[]): Promise<void> {
  if (entries.length > 0) await change('entry.withdraw', { entries: [...entries], why: '' });
}
