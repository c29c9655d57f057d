import { base64Text } from '../journal/base64-text.ts';
import { hexBytes, joinBytes } from '../journal/hex-text.ts';

/** The DER bytes before a raw Ed25519 public key. Source: RFC 8410 (from memory; recomputed with the RFC 8032 vectors). */
const PREFIX = '302a300506032b6570032100';

/** A raw Ed25519 public key (32 bytes) as PEM, the form that common tools read. */
export function publicKeyText(publicKey: Uint8Array): string {
  return `-----BEGIN PUBLIC KEY-----\n${base64Text(joinBytes(hexBytes(PREFIX), publicKey))}\n-----END PUBLIC KEY-----\n`;
}
