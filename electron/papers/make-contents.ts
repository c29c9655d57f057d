import type { Paper } from '../../shared-core/records/paper.ts';
import type { PaperContents } from '../../shared-core/records/paper-contents.ts';
import { captureTime } from '../../shared-core/records/capture-time.ts';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { sha256 } from '../host/node-digests.ts';
import { describeImage, shrinkImage } from './decode-image.ts';
import type { PdfThread } from './pdf-thread.ts';
import { readExif } from './read-exif.ts';
import { readPdf } from './read-pdf.ts';
import { renderPdfPage } from './render-pdf-page.ts';

/** The longest side of a thumbnail, in points. */
const THUMBNAIL = 360;

/** What a paper's bytes tell, and its thumbnail where it has one. */
export interface MadeContents {
  readonly contents: PaperContents;
  readonly thumbnail: Uint8Array | null;
  /** The machine was too slow this time: it may go well another time. */
  readonly passing?: boolean;
}

const NOTHING: PaperContents = { version: 1, state: 'unreadable', pages: 0, width: 0, height: 0, capture: null, text: '', thumbnail: null };

/** Reads what a paper's bytes tell and makes its thumbnail; whatever the file is, the answer is a value. */
export async function makeContents(thread: PdfThread, bytes: Uint8Array, media: Paper['media']): Promise<MadeContents> {
  if (media === 'application/octet-stream') return { contents: { ...NOTHING, state: 'opaque' }, thumbnail: null };
  return media === 'application/pdf' ? ofPdf(thread, bytes) : ofImage(bytes);
}

async function ofPdf(thread: PdfThread, bytes: Uint8Array): Promise<MadeContents> {
  const read = await readPdf(thread, bytes);
  if (!read.ok) return { contents: { ...NOTHING, state: read.refusal.code === 'pdf-locked' ? 'locked' : 'unreadable' }, thumbnail: null, passing: read.refusal.code === 'pdf-too-slow' };
  const drawn = await renderPdfPage(thread, bytes, 1, THUMBNAIL);
  const thumbnail = drawn.ok ? await shrinkImage(drawn.value, THUMBNAIL) : null;
  const { pages, width, height, text } = read.value;
  return withThumbnail({ ...NOTHING, state: 'read', pages, width, height, text: text.join('\f') }, thumbnail);
}

async function ofImage(bytes: Uint8Array): Promise<MadeContents> {
  const described = await describeImage(bytes);
  const thumbnail = described === null ? null : await shrinkImage(bytes, THUMBNAIL);
  if (described === null || thumbnail === null) return { contents: NOTHING, thumbnail: null };
  const tags = described.exif === null ? null : await readExif(described.exif);
  return withThumbnail({ ...NOTHING, state: 'read', pages: 1, width: described.width, height: described.height, capture: tags === null ? null : captureTime(tags) }, thumbnail);
}

function withThumbnail(contents: PaperContents, thumbnail: Uint8Array | null): MadeContents {
  return { contents: { ...contents, thumbnail: thumbnail === null ? null : hexText(sha256(thumbnail)) }, thumbnail };
}
