import { MOST_PREVIEW_PAGES, type PackPreview } from '../../../shared-core/handover/handover-schemas.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { readPdf } from '../../papers/read-pdf.ts';
import { renderPdfPage } from '../../papers/render-pdf-page.ts';
import type { PackChoice } from '../compose-history-pack.ts';
import type { HostContext } from '../host-context.ts';
import { composeAtRest } from './write-history-pack.ts';

const PIXELS_WIDE = 1100;
const LONGEST = 1600;

/** The document composed last, for each host: the very one that the pack would hold. */
const held = new WeakMap<HostContext, { readonly id: string; readonly pdf: Uint8Array }>();

/** Composes a pack, writes nothing, and keeps its document to be looked at. */
export async function previewPack(context: HostContext, request: PackChoice & { readonly car: string }): Promise<Result<PackPreview>> {
  const composed = await composeAtRest(context, request);
  if (!composed.ok) return composed;
  const { pack, pdf, summary } = composed.value;
  // The thread takes the bytes that it is given to itself.
  const read = await readPdf(context.papers.pdf, pdf.slice());
  if (!read.ok) return read;
  const id = context.world.newId();
  held.set(context, { id, pdf });
  return ok({
    preview: id,
    pages: read.value.pages,
    shown: Math.min(read.value.pages, MOST_PREVIEW_PAGES),
    files: pack.files.length,
    bytes: pack.files.reduce((sum, file) => sum + file.size, 0),
    figures: summary.figures.map(([name, text]) => ({ name, text })),
    gaps: [...summary.gaps],
    open: [...summary.open],
    withheld: [...summary.withheld],
  });
}

/** A page of the document composed last. Refused `preview-gone` where another has been composed since. */
export async function previewPage(context: HostContext, { preview, page }: { readonly preview: string; readonly page: number }): Promise<Result<{ webp: string }>> {
  const kept = held.get(context);
  if (kept?.id !== preview) return refuse('preview-gone');
  const drawn = await renderPdfPage(context.papers.pdf, kept.pdf.slice(), page, PIXELS_WIDE);
  if (!drawn.ok) return drawn;
  // Loaded only when a page is drawn: every command passes here.
  const { shrinkImage } = await import('../../papers/decode-image.ts');
  return ok({ webp: Buffer.from(must(await shrinkImage(drawn.value, LONGEST), 'picture of a page')).toString('base64') });
}
