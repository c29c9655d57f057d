import type { Paper } from '../../shared-core/records/paper.ts';
import type { PaperDesk } from '../papers/paper-desk.ts';

/** Papers as they can be put on a page (JPEG, nothing of the camera's own notes left), by their digest. */
export interface PaperPictures {
  readonly small: ReadonlyMap<string, Buffer>;
  /** The photograph on the first page; null where there is none. */
  readonly cover: Buffer | null;
}

const QUALITY = 82;
/** The longest side of the photograph on the first page, in points of a picture. */
const COVER_SIDE = 1400;

/** Draws each paper small, by its first page, and one of them large; a paper that cannot be drawn has no picture. */
export async function paperPictures({ desk, folder }: { readonly desk: PaperDesk; readonly folder: string }, papers: readonly Paper[], cover: string | null): Promise<PaperPictures> {
  const { default: sharp } = await import('sharp');
  const jpeg = (bytes: Uint8Array, side: number) => sharp(bytes).resize({ width: side, height: side, fit: 'inside', withoutEnlargement: true }).flatten({ background: '#ffffff' }).jpeg({ quality: QUALITY }).toBuffer();
  const small = new Map<string, Buffer>();
  for (const paper of papers) {
    const thumbnail = await desk.thumbnail(folder, paper);
    if (thumbnail !== null) small.set(paper.id, await jpeg(thumbnail, COVER_SIDE));
  }
  const chosen = papers.find((paper) => paper.id === cover);
  const page = chosen === undefined ? null : await desk.page(folder, chosen, 1);
  return { small, cover: page === null ? null : await jpeg(page, COVER_SIDE) };
}
