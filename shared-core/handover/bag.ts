import { assert } from '../result/assert.ts';
import { compareUtf8 } from '../journal/utf8-text.ts';
import { manifestPath } from './manifest-path.ts';

/** A file as a manifest lists it: its path from the bag's base and its SHA-512 in hexadecimal. */
export interface ListedFile {
  readonly path: string;
  readonly sha512: string;
}

/** The names of the bag's own files. */
export const BAG_DECLARATION = 'bagit.txt';
export const BAG_INFO = 'bag-info.txt';
export const MANIFEST = 'manifest-sha512.txt';
export const TAG_MANIFEST = 'tagmanifest-sha512.txt';
/** The folder that holds everything handed over. */
export const PAYLOAD = 'data/';

/** The text of `bagit.txt`. Source: RFC 8493 section 2.1.1 (seen). */
export const BAG_DECLARATION_TEXT = 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n';

/**
 * The text of a manifest, sorted by the bytes of the paths, in the form that `sha512sum -c` reads.
 *
 * Source: RFC 8493 section 2.1.3 (seen); two spaces, as coreutils writes them. Paths with a line break or a percent sign are
 * encoded as the RFC says and then not found by coreutils, so packs have none.
 * @example manifestText([{ path: 'data/a.txt', sha512 }]) //=> '<128 digits>  data/a.txt\n'
 */
export function manifestText(files: readonly ListedFile[]): string {
  const paths = new Set(files.map((file) => file.path));
  assert(paths.size === files.length, 'a path listed once');
  return [...files]
    .sort((a, b) => compareUtf8(a.path, b.path))
    .map((file) => `${file.sha512}  ${manifestPath(file.path)}\n`)
    .join('');
}

/** A label of `bag-info.txt` and its value, one line each. */
export type BagInfoLabel = readonly [label: string, value: string];

/**
 * The text of `bag-info.txt`: the labels in the order given, then the payload's bytes and files as `Payload-Oxum`.
 *
 * Source: RFC 8493 section 2.2.2 (seen).
 * @example bagInfoText([['Bagging-Date', '2026-11-25']], [{ size: 6 }]) //=> 'Bagging-Date: 2026-11-25\nPayload-Oxum: 6.1\n'
 */
export function bagInfoText(labels: readonly BagInfoLabel[], payload: readonly { readonly size: number }[]): string {
  const bytes = payload.reduce((sum, file) => sum + file.size, 0);
  return [...labels, ['Payload-Oxum', `${bytes}.${payload.length}`] as const].map(infoLine).join('');
}

function infoLine([label, value]: BagInfoLabel): string {
  assert(/^[^\s:](?:[^:\r\n]*[^\s:])?$/.test(label), 'a label without colon or line break');
  assert(!/[\r\n]/.test(value), 'a value of one line');
  return `${label}: ${value}\n`;
}
