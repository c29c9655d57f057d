import { assert } from '../result/assert.ts';

const HEX_PAIRS = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'));
const HEX = /^(?:[0-9a-f]{2})*$/;

/** Bytes as lower-case hexadecimal text. @example hexText(new Uint8Array([255, 0])) //=> 'ff00' */
export function hexText(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += HEX_PAIRS[byte] ?? '';
  return text;
}

/** The bytes of lower-case hexadecimal text; any other text is our own bug. @example hexBytes('ff00') //=> [255, 0] */
export function hexBytes(text: string): Uint8Array {
  assert(HEX.test(text), 'text that is not lower-case hexadecimal');
  const bytes = new Uint8Array(text.length / 2);
  for (let at = 0; at < bytes.length; at += 1) bytes[at] = Number.parseInt(text.slice(2 * at, 2 * at + 2), 16);
  return bytes;
}

/** Whether two byte strings are the same. */
export function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, at) => byte === b[at]);
}

/** Byte strings one after another. */
export function joinBytes(...parts: readonly Uint8Array[]): Uint8Array {
  const joined = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    joined.set(part, at);
    at += part.length;
  }
  return joined;
}
