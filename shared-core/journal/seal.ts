import { z } from 'zod';
import { canonicalJson } from './canonical-json.ts';
import { sha256TextSchema, type Sha256, type SignEd25519, type VerifyEd25519 } from './digest.ts';
import { hexBytes, hexText } from './hex-text.ts';
import { utf8Bytes } from './utf8-text.ts';

/**
 * A signed head of the journal: how many rows, the root of their tree, whose key (SHA-256 of the raw public key) and its
 * Ed25519 signature; hexadecimal text.
 */
export const sealSchema = z.strictObject({
  treeSize: z.int().positive(),
  root: sha256TextSchema,
  keyFingerprint: sha256TextSchema,
  signature: z.string().regex(/^[0-9a-f]{128}$/),
});
export type Seal = z.infer<typeof sealSchema>;

/** The head of a journal: what a seal signs. */
export interface JournalHead {
  readonly treeSize: number;
  readonly root: string;
}

/** Why a seal does not hold: another key than the one shown, or a signature that the key did not make. */
export type SealFault = 'other-key' | 'bad-signature';

/** The fingerprint of a raw public key (32 bytes): its SHA-256 in hexadecimal. */
export function keyFingerprint(publicKey: Uint8Array, sha256: Sha256): string {
  return hexText(sha256(publicKey));
}

/** What is signed: canonical text with its purpose in it, so that the signature fits nothing else. */
export function sealedText(head: JournalHead, fingerprint: string): string {
  return canonicalJson({ seal: 'trunnion-journal-1', treeSize: head.treeSize, root: head.root, keyFingerprint: fingerprint });
}

/**
 * A seal over a journal's head. Ed25519 signs the same text always the same way, so one head has one seal.
 *
 * Source: RFC 8032 section 5.1 (vectors recomputed through the host's signer).
 */
export function makeSeal(head: JournalHead, fingerprint: string, sign: SignEd25519): Seal {
  const signature = hexText(sign(utf8Bytes(sealedText(head, fingerprint))));
  return sealSchema.parse({ ...head, keyFingerprint: fingerprint, signature });
}

/** Whether a seal was made with this public key (32 raw bytes) over its own size and root: the fault, or null. */
export function sealFault(seal: Seal, publicKey: Uint8Array, sha256: Sha256, verify: VerifyEd25519): SealFault | null {
  if (keyFingerprint(publicKey, sha256) !== seal.keyFingerprint) return 'other-key';
  const message = utf8Bytes(sealedText(seal, seal.keyFingerprint));
  return verify(publicKey, message, hexBytes(seal.signature)) ? null : 'bad-signature';
}
