import type { Sha256, Sha512 } from '../journal/digest.ts';
import { hexText } from '../journal/hex-text.ts';
import { utf8Bytes } from '../journal/utf8-text.ts';

/** Where a file's bytes come from: at hand, or to be streamed by the host from what `source` names to it. */
export type PackContent =
  | { readonly kind: 'bytes'; readonly bytes: Uint8Array }
  | { readonly kind: 'source'; readonly source: string; readonly crc32: number };

/** A file of a pack, measured; its path is from the pack's own folder. */
export interface PackFile {
  readonly path: string;
  readonly size: number;
  /** Hexadecimal digests. */
  readonly sha256: string;
  readonly sha512: string;
  readonly content: PackContent;
}

/** The digests that a pack is made with. */
export interface Digests {
  readonly sha256: Sha256;
  readonly sha512: Sha512;
}

/** A file of a pack from bytes at hand. */
export function bytesFile(path: string, bytes: Uint8Array, { sha256, sha512 }: Digests): PackFile {
  const digests = { sha256: hexText(sha256(bytes)), sha512: hexText(sha512(bytes)) };
  return { path, size: bytes.length, ...digests, content: { kind: 'bytes', bytes } };
}

/** A file of a pack from text, as UTF-8. */
export function textFile(path: string, text: string, digests: Digests): PackFile {
  return bytesFile(path, utf8Bytes(text), digests);
}

/** Paths of the files that a program reads. */
export const SIGNED_CONTENTS = 'signed-contents.json';
export const SIGNATURE = 'signed-contents.sig';
export const HISTORY = 'data/history.json';
export const ROWS = 'data/journal/rows.json';
export const SEAL = 'data/journal/seal.json';
export const SEAL_TEXT = 'data/journal/seal.txt';
export const PUBLIC_KEY = 'data/journal/household-key.pem';
export const CHECK_NOTE = 'data/how-to-check.txt';
/** The folder of the rows, the seal and the key. */
export const JOURNAL = 'data/journal/';
/** The folder of the JSON Schemas. */
export const SCHEMA = 'data/schema/';
/** The folder of packs that earlier keepers handed over. */
export const PREVIOUS = 'data/previous/';
