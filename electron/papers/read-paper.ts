import { readFileSync } from 'node:fs';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { sha256 } from '../host/node-digests.ts';
import { paperPath } from './write-paper.ts';

const ID = /^[0-9a-f]{64}$/;

/** A paper's bytes, checked against its digest; `missing` or `altered` where they are not to be had as they were kept. */
export type PaperBytes = { readonly state: 'whole'; readonly bytes: Uint8Array } | { readonly state: 'missing' | 'altered' };

/** Reads a paper by its digest; anything else is never turned into a path. */
export function readPaper(folder: string, id: string): PaperBytes {
  if (!ID.test(id)) return { state: 'missing' };
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(paperPath(folder, id));
  } catch {
    return { state: 'missing' };
  }
  return hexText(sha256(bytes)) === id ? { state: 'whole', bytes } : { state: 'altered' };
}
