/** The size of an image in pixels. */
export interface ImageSize {
  readonly width: number;
  readonly height: number;
}

/**
 * The size that an image's own header states, or null where the file is broken: cut short, or without its end mark.
 *
 * Source: PNG (RFC 2083 s3.2, s4.1.1), JPEG (ITU-T T.81 annex B), WebP (RFC 9649 s2); from memory.
 */
export function readImageSize(bytes: Uint8Array, media: string): ImageSize | null {
  const data = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  if (media === 'image/png') return pngSize(data);
  return media === 'image/jpeg' ? jpegSize(data) : webpSize(data);
}

function pngSize(data: Buffer): ImageSize | null {
  if (data.length < 45 || data.toString('latin1', 12, 16) !== 'IHDR' || !data.subarray(-12).includes('IEND')) return null;
  return sized(data.readUInt32BE(16), data.readUInt32BE(20));
}

/** Walks the markers to the frame header; the file must close with the end-of-image mark. */
function jpegSize(data: Buffer): ImageSize | null {
  if (!data.subarray(-64).includes(Buffer.from([0xff, 0xd9]))) return null;
  for (let at = 2; at + 9 < data.length; ) {
    const marker = data[at + 1] ?? 0;
    if (data[at] !== 0xff) return null;
    if (isFrameHeader(marker)) return sized(data.readUInt16BE(at + 7), data.readUInt16BE(at + 5));
    at += 2 + data.readUInt16BE(at + 2);
  }
  return null;
}

/** Start-of-frame markers are C0 to CF without DHT, JPG and DAC. */
function isFrameHeader(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
}

function webpSize(data: Buffer): ImageSize | null {
  if (data.length < 30 || data.readUInt32LE(4) + 8 > data.length) return null;
  const kind = data.toString('latin1', 12, 16);
  if (kind === 'VP8X') return sized(1 + data.readUIntLE(24, 3), 1 + data.readUIntLE(27, 3));
  if (kind === 'VP8 ') return sized(data.readUInt16LE(26) & 0x3fff, data.readUInt16LE(28) & 0x3fff);
  if (kind !== 'VP8L') return null;
  const bits = data.readUInt32LE(21);
  return sized((bits & 0x3fff) + 1, ((bits >> 14) & 0x3fff) + 1);
}

function sized(width: number, height: number): ImageSize | null {
  return width > 0 && height > 0 ? { width, height } : null;
}
