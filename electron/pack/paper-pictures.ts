import type { Paper } from '../../shared-core/records/paper.ts';
import type { RedactedCopy } from '../papers/kept-copy.ts';
import type { PaperDesk } from '../papers/paper-desk.ts';

/** Papers as they can be put on a page (JPEG, nothing of the camera's own notes left), by the digests of their files in the pack. */
export interface PaperPictures {
  readonly small: ReadonlyMap<string, Buffer>;
  /** The photograph on the first page; null where there is none. */
  readonly cover: Buffer | null;
}

const QUALITY = 82;
/** The longest side of the photograph on the first page, in points of a picture. */
const COVER_SIDE = 1400;
/** The longest side of a small one: that of a thumbnail. */
const SMALL_SIDE = 360;

/** A paper to be drawn, and the copy of it that takes its place where parts of it are blacked out. */
interface PaperToDraw {
  readonly paper: Paper;
  readonly file: { readonly sha256: string };
  readonly copy: RedactedCopy | null;
}

/** Draws each paper small, by its first page, and one of them large; a paper that cannot be drawn has no picture. Of a copy, nothing else is drawn. */
export async function paperPictures({ desk, folder }: { readonly desk: PaperDesk; readonly folder: string }, papers: readonly PaperToDraw[], cover: PaperToDraw | null): Promise<PaperPictures> {
  const { default: sharp } = await import('sharp');
  const jpeg = (bytes: Uint8Array, side: number) => sharp(bytes).resize({ width: side, height: side, fit: 'inside', withoutEnlargement: true }).flatten({ background: '#ffffff' }).jpeg({ quality: QUALITY }).toBuffer();
  const small = new Map<string, Buffer>();
  for (const { paper, file, copy } of papers) {
    const drawn = copy === null ? await desk.thumbnail(folder, paper) : await desk.copyPage(copy, 1);
    if (drawn !== null) small.set(file.sha256, await jpeg(drawn, copy === null ? COVER_SIDE : SMALL_SIDE));
  }
  const page = cover === null ? null : cover.copy === null ? await desk.page(folder, cover.paper, 1) : await desk.copyPage(cover.copy, 1);
  return { small, cover: page === null ? null : await jpeg(page, COVER_SIDE) };
}
