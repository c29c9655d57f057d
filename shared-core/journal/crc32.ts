const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/**
 * The CRC-32 of bytes as an unsigned number: a check against slips, not against intent.
 *
 * Source: IEEE 802.3, reflected polynomial EDB88320 (vectors recomputed).
 * @example crc32(utf8Bytes('123456789')) //=> 0xcbf43926
 */
export function crc32(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (const byte of bytes) value = (TABLE[(value ^ byte) & 0xff] ?? 0) ^ (value >>> 8);
  return (value ^ 0xffffffff) >>> 0;
}
