/** Digits and letters without I, L, O and U: none is taken for another. Source: Crockford's base 32 (from memory). */
const DIGITS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** Bytes as base 32 text, the last digit filled up with zero bits. @example base32Text(new Uint8Array([255])) //=> 'ZW' */
export function base32Text(bytes: Uint8Array): string {
  let [text, held, bits] = ['', 0, 0];
  for (const byte of bytes) {
    [held, bits] = [(held << 8) | byte, bits + 8];
    while (bits >= 5) {
      bits -= 5;
      text += DIGITS[(held >> bits) & 31] ?? '';
    }
    held &= (1 << bits) - 1;
  }
  return bits === 0 ? text : text + (DIGITS[(held << (5 - bits)) & 31] ?? '');
}

/**
 * The bytes of base 32 text, O read as 0, I and L as 1, in either case; null where a character is none of its digits or
 * the filling bits are not zero.
 */
export function base32Bytes(text: string): Uint8Array | null {
  const bytes: number[] = [];
  let [held, bits] = [0, 0];
  for (const character of text.toUpperCase().replaceAll('O', '0').replaceAll(/[IL]/g, '1')) {
    const digit = DIGITS.indexOf(character);
    if (digit < 0) return null;
    [held, bits] = [(held << 5) | digit, bits + 5];
    if (bits >= 8) {
      bits -= 8;
      bytes.push((held >> bits) & 255);
    }
    held &= (1 << bits) - 1;
  }
  return held === 0 && bits < 5 ? Uint8Array.from(bytes) : null;
}
