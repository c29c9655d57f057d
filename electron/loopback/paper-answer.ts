import { COMMON_HEADERS, PAPER_POLICY } from './page-policy.ts';
import type { PaperAsked } from './paper-path.ts';

/** A kept paper's bytes or picture, with its kind; null where there is none of that paper. */
export type FindPaper = (asked: PaperAsked) => Promise<{ readonly bytes: Uint8Array; readonly mediaType: string } | null>;

/** Kinds that a browser draws by itself without running anything in them. */
const SHOWN: Readonly<Record<string, string | undefined>> = { 'image/jpeg': 'jpg', 'image/png': 'png', 'image/webp': 'webp', 'image/gif': 'gif', 'text/plain': 'txt' };

/**
 * The headers a paper goes out with: a picture is shown, in a sandbox; anything else, PDF and kinds not known here included, is
 * handed over as a file. The name is the digest's beginning, so no name from outside reaches a header.
 */
export function paperHeaders(sha256: string, mediaType: string): Record<string, string> {
  const shown = Object.hasOwn(SHOWN, mediaType) ? SHOWN[mediaType] : undefined;
  const ending = shown ?? (mediaType === 'application/pdf' ? 'pdf' : 'bin');
  const how = shown === undefined ? 'attachment' : 'inline';
  return {
    ...COMMON_HEADERS,
    'content-security-policy': PAPER_POLICY,
    'content-type': ending === 'bin' ? 'application/octet-stream' : mediaType,
    'content-disposition': `${how}; filename="paper-${sha256.slice(0, 12)}.${ending}"`,
  };
}
