import { createPublicKey, hash, sign, verify, type KeyObject } from 'node:crypto';
import type { Sha256, Sha512, SignEd25519, VerifyEd25519 } from '../../shared-core/journal/digest.ts';

/** SHA-256 by Node's own cryptography. */
export const sha256: Sha256 = (bytes) => hash('sha256', bytes, 'buffer');

/** SHA-512 by Node's own cryptography. */
export const sha512: Sha512 = (bytes) => hash('sha512', bytes, 'buffer');

/** The DER bytes before a raw Ed25519 public key. Source: RFC 8410 (from memory; recomputed with the RFC 8032 vectors). */
const PUBLIC_KEY_PREFIX = Buffer.from('302a300506032b6570032100', 'hex');
const RAW_KEY_BYTES = 32;

/** A signer for a private Ed25519 key. */
export function ed25519Signer(privateKey: KeyObject): SignEd25519 {
  return (message) => sign(null, message, privateKey);
}

/** Checks an Ed25519 signature; a key or signature that is malformed is simply not valid. */
export const verifyEd25519: VerifyEd25519 = (publicKey, message, signature) => {
  if (publicKey.length !== RAW_KEY_BYTES) return false;
  try {
    const key = createPublicKey({ key: Buffer.concat([PUBLIC_KEY_PREFIX, publicKey]), format: 'der', type: 'spki' });
    return verify(null, message, key, signature);
  } catch {
    return false;
  }
};

/** The raw 32 bytes of an Ed25519 key's public half. */
export function rawPublicKey(key: KeyObject): Uint8Array {
  const publicKey = key.type === 'private' ? createPublicKey(key) : key;
  return publicKey.export({ format: 'der', type: 'spki' }).subarray(PUBLIC_KEY_PREFIX.length);
}
