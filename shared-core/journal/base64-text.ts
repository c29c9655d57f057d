const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Bytes as base 64 text with padding. Source: RFC 4648 section 4 (from memory; compared with the platform's in the tests). */
export function base64Text(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 3) {
    const held = ((bytes[at] ?? 0) << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0);
    const digits = [18, 12, 6, 0].map((shift) => DIGITS[(held >> shift) & 63] ?? '');
    text += digits.slice(0, 1 + Math.min(3, bytes.length - at)).join('').padEnd(4, '=');
  }
  return text;
}
