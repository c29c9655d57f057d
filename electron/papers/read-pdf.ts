import { ok, type Result } from '../../shared-core/result/result.ts';
import type { PdfContents } from './pdf-messages.ts';
import type { PdfThread } from './pdf-thread.ts';

const MOST_PAGES = 40;
const MOST_LETTERS = 20_000;

/**
 * What a PDF holds: its pages, the size of the first in points, and the text of the first pages, up to 20 000 letters.
 *
 * @example await readPdf(thread, bytes) //=> { ok: true, value: { pages: 2, width: 595, height: 842, text: ['A receipt', ''] } }
 */
export async function readPdf(thread: PdfThread, bytes: Uint8Array): Promise<Result<PdfContents>> {
  const reply = await thread.ask({ kind: 'read', bytes, mostPages: MOST_PAGES, mostLetters: MOST_LETTERS });
  if (!reply.ok) return reply;
  if (reply.value.kind !== 'read') throw new Error('the thread for PDFs answered another question');
  return ok(reply.value.contents);
}
