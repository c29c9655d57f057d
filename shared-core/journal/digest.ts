import { z } from 'zod';

/** A SHA-256 of bytes, given by the host: 32 bytes. Source: FIPS 180-4 (vectors recomputed). */
export type Sha256 = (bytes: Uint8Array) => Uint8Array;

/** A SHA-512 of bytes, given by the host: 64 bytes. */
export type Sha512 = (bytes: Uint8Array) => Uint8Array;

/** Signs with the household's key (Ed25519): 64 bytes. */
export type SignEd25519 = (message: Uint8Array) => Uint8Array;

/** Whether a signature (64 bytes) over the message was made with the key of this raw public half (32 bytes). */
export type VerifyEd25519 = (publicKey: Uint8Array, message: Uint8Array, signature: Uint8Array) => boolean;

/** A SHA-256 as it is written: 64 lower-case hexadecimal digits. */
export const sha256TextSchema = z.string().regex(/^[0-9a-f]{64}$/);

/** Bytes in a SHA-256. */
export const SHA256_BYTES = 32;
