import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { canonicalJson } from '../../shared-core/journal/canonical-json.ts';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { utf8Bytes } from '../../shared-core/journal/utf8-text.ts';
import { sha256TextSchema } from '../../shared-core/journal/digest.ts';
import { sha256 } from '../host/node-digests.ts';
import { makeIn, THUMBNAILS, writeWhole } from './kept-contents.ts';
import type { Blackening } from './redact-image.ts';

/** Another way of making copies makes them anew. */
const VERSION = 1;

const aboutSchema = z.strictObject({ sha256: sha256TextSchema, media: z.enum(['application/pdf', 'image/jpeg', 'image/png']), pages: z.int().min(1) });

/** A copy of a paper with its marks burned in, as it lies on the disk. */
export interface RedactedCopy extends z.infer<typeof aboutSchema> {
  readonly path: string;
}

/** What a copy is kept by: the paper, how it is turned, and where it is marked. */
export function copyKey(paper: string, { turned, marks }: Blackening): string {
  return hexText(sha256(utf8Bytes(canonicalJson({ version: VERSION, paper, turned, marks: marks.map((mark) => ({ ...mark })) }))));
}

/** The copy made before; null where it is missing or not the one that was made. */
export function keptCopy(folder: string, key: string): RedactedCopy | null {
  try {
    const about = aboutSchema.parse(JSON.parse(readFileSync(`${placeOf(folder, key)}.json`, 'utf8')));
    const path = `${placeOf(folder, key)}.copy`;
    return hexText(sha256(readFileSync(path))) === about.sha256 ? { ...about, path } : null;
  } catch {
    return null;
  }
}

/** Keeps a copy beside the thumbnails: like them it can be made again at any time. File-system errors are thrown. */
export function keepCopy(folder: string, key: string, bytes: Uint8Array, { media, pages }: Pick<RedactedCopy, 'media' | 'pages'>): RedactedCopy {
  const about = { sha256: hexText(sha256(bytes)), media, pages };
  for (const place of [join(folder, THUMBNAILS), join(folder, THUMBNAILS, key.slice(0, 2))]) makeIn(place);
  writeWhole(`${placeOf(folder, key)}.copy`, bytes);
  writeWhole(`${placeOf(folder, key)}.json`, JSON.stringify(about));
  return { ...about, path: `${placeOf(folder, key)}.copy` };
}

function placeOf(folder: string, key: string): string {
  return join(folder, THUMBNAILS, key.slice(0, 2), key);
}
