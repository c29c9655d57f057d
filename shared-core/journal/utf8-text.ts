import { assert } from '../result/assert.ts';
import { isWellFormed } from './canonical-json.ts';

/**
 * The UTF-8 bytes of a text. Written out here because the core knows no platform; lone surrogates are our own bug.
 *
 * Source: RFC 3629 section 3 (from memory; compared with the platform's encoder in the tests).
 * @example utf8Bytes('é') //=> Uint8Array [0xc3, 0xa9]
 */
export function utf8Bytes(text: string): Uint8Array {
  assert(isWellFormed(text), 'a lone surrogate has no UTF-8 form');
  const bytes = new Uint8Array(utf8Length(text));
  let at = 0;
  for (const character of text) at = writeCodePoint(bytes, at, character.codePointAt(0) ?? 0);
  return bytes;
}

/** How many bytes a text takes in UTF-8. @example utf8Length('é') //=> 2 */
export function utf8Length(text: string): number {
  let length = 0;
  for (const character of text) length += lengthOf(character.codePointAt(0) ?? 0);
  return length;
}

function lengthOf(point: number): number {
  if (point < 0x80) return 1;
  if (point < 0x800) return 2;
  return point < 0x10000 ? 3 : 4;
}

function writeCodePoint(bytes: Uint8Array, at: number, point: number): number {
  const length = lengthOf(point);
  if (length === 1) {
    bytes[at] = point;
    return at + 1;
  }
  for (let back = length - 1; back > 0; back -= 1) bytes[at + back] = 0x80 | ((point >> (6 * (length - 1 - back))) & 0x3f);
  // The first byte carries as many leading ones as the character has bytes.
  bytes[at] = ((0xf00 >> length) & 0xff) | (point >> (6 * (length - 1)));
  return at + length;
}

/** -1, 0 or 1: which of two texts comes first by its UTF-8 bytes, as `LC_ALL=C sort` has it. */
export function compareUtf8(a: string, b: string): number {
  const [left, right] = [utf8Bytes(a), utf8Bytes(b)];
  const shared = Math.min(left.length, right.length);
  for (let at = 0; at < shared; at += 1) {
    const difference = (left[at] ?? 0) - (right[at] ?? 0);
    if (difference !== 0) return Math.sign(difference);
  }
  return Math.sign(left.length - right.length);
}
