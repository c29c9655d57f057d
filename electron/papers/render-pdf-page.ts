import { ok, type Result } from '../../shared-core/result/result.ts';
import type { PageImage } from './pdf-messages.ts';
import type { PdfThread } from './pdf-thread.ts';

/**
 * Draws a page of a PDF, counted from 1, on white: so many points wide, or fewer where the page is very long or would be finer than is wanted.
 *
 * @example await renderPdfPage(thread, bytes, 1, 1200) //=> { ok: true, value: { width: 1200, height: 1697, rgba, page } }
 */
export async function renderPdfPage(thread: PdfThread, bytes: Uint8Array, page: number, pixelsWide: number, mostDotsPerInch: number | null = null): Promise<Result<PageImage>> {
  const reply = await thread.ask({ kind: 'render', bytes, page, pixelsWide, mostDotsPerInch });
  if (!reply.ok) return reply;
  if (reply.value.kind !== 'rendered') throw new Error('the thread for PDFs answered another question');
  return ok(reply.value.image);
}
