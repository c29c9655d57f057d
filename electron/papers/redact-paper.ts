import type { Paper } from '../../shared-core/records/paper.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import type { RedactedCopy } from './kept-copy.ts';
import type { PdfThread } from './pdf-thread.ts';
import { redactImage, type Blackening } from './redact-image.ts';
import { redactPdf } from './redact-pdf.ts';

/** The bytes of a copy, its kind and its pages. */
export interface MadeCopy extends Pick<RedactedCopy, 'media' | 'pages'> {
  readonly bytes: Uint8Array;
}

/** A copy of a paper that is black where it is marked and holds nothing else of it; whatever the file is, the answer is a value. */
export async function redactPaper(thread: PdfThread, bytes: Uint8Array, media: Paper['media'], how: Blackening): Promise<Result<MadeCopy>> {
  if (media === 'application/octet-stream') return refuse('paper-not-drawn');
  if (media === 'application/pdf') {
    const made = await redactPdf(thread, bytes, how);
    return made.ok ? ok({ ...made.value, media }) : made;
  }
  const made = await redactImage(bytes, media, how);
  return made === null ? refuse('paper-broken', { kind: 'image' }) : ok({ bytes: made, media: media === 'image/png' ? media : 'image/jpeg', pages: 1 });
}
