import { fileTypeFromBuffer } from 'file-type';
import type { Paper } from '../../shared-core/records/paper.ts';
import { LARGEST_PAPER_BYTES } from '../../shared-core/contract/host-operations.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { readImageSize } from './read-image-size.ts';

const LARGEST_SIDE = 30_000;
/** A few bytes may say that they are an image of any size; what shows it needs memory for every point. */
const MOST_POINTS = 250_000_000;
const SHOWN: ReadonlySet<string> = new Set(['application/pdf', 'image/jpeg', 'image/png', 'image/webp']);

/**
 * What kind of file a paper is, by its bytes and never by its name. A file that says it is an image or a PDF and is broken
 * is refused; any other kind is kept as it is and not shown.
 */
export async function judgePaper(bytes: Uint8Array): Promise<Result<Paper['media']>> {
  if (bytes.length === 0) return refuse('paper-empty');
  if (bytes.length > LARGEST_PAPER_BYTES) return refuse('paper-too-large', { most: LARGEST_PAPER_BYTES });
  const media = (await fileTypeFromBuffer(bytes))?.mime ?? 'application/octet-stream';
  if (!SHOWN.has(media)) return ok('application/octet-stream');
  if (media === 'application/pdf') return endsLikePdf(bytes) ? ok(media) : refuse('paper-broken', { kind: 'PDF' });
  const size = readImageSize(bytes, media);
  if (size === null) return refuse('paper-broken', { kind: 'image' });
  if (size.width > LARGEST_SIDE || size.height > LARGEST_SIDE || size.width * size.height > MOST_POINTS) return refuse('image-too-large', { most: LARGEST_SIDE, all: MOST_POINTS });
  return ok(media as Paper['media']);
}

/** A PDF ends with %%EOF, perhaps with white space or a little rubbish after it. */
function endsLikePdf(bytes: Uint8Array): boolean {
  return Buffer.from(bytes.subarray(-1024)).includes('%%EOF');
}
