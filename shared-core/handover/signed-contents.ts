import { z } from 'zod';
import { dateSchema } from '../calendar/date-schema.ts';
import type { LocalDate } from '../calendar/local-date.ts';
import { canonicalJson } from '../journal/canonical-json.ts';
import { sha256TextSchema } from '../journal/digest.ts';
import type { ListedFile } from './bag.ts';

/** The form of this list; a later form has a higher number. */
export const PACK_FORMAT = 'trunnion-pack-1';

/**
 * What the household signs of a pack: its name and date, the head of its journal, and the SHA-512 of every file that is not
 * about this list itself. It is a tag file of the bag, so it can list the payload and the bag's own files alike.
 */
export const signedContentsSchema = z.strictObject({
  format: z.literal(PACK_FORMAT),
  name: z.string().min(1).max(200),
  composedOn: dateSchema,
  publicKey: sha256TextSchema,
  treeSize: z.int().positive(),
  root: sha256TextSchema,
  files: z.record(z.string(), z.string().regex(/^[0-9a-f]{128}$/)),
});
export type SignedContents = z.infer<typeof signedContentsSchema>;

/** What the list is made of beside its files. */
export interface ContentsHead {
  readonly name: string;
  readonly composedOn: LocalDate;
  /** 32 raw bytes in hexadecimal. */
  readonly publicKey: string;
  readonly treeSize: number;
  readonly root: string;
}

/** The canonical text that is signed: the very bytes of the file, so that common tools can check the signature. */
export function signedContentsText(head: ContentsHead, files: readonly ListedFile[]): string {
  const listed = Object.fromEntries(files.map((file) => [file.path, file.sha512]));
  return canonicalJson({ format: PACK_FORMAT, ...head, files: listed });
}
