import { crc32 } from 'node:zlib';

/** The size of an image in pixels. */
export interface ImageSize {
  readonly width: number;
  readonly height: number;
}

/**
 * The size that an image's own header states, or null where the file is broken: cut short, without its end mark, or, in a PNG,
 * with a chunk that its own checksum denies. What stands after the end mark is let be: telephones put films and notes there.
 *
 * Source: PNG (RFC 2083 s3.2 to s3.4, s4.1), JPEG (ITU-T T.81 annex B), WebP (RFC 9649 s2); from memory.
 */
export function readImageSize(bytes: Uint8Array, media: string): ImageSize | null {
  const data = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  if (media === 'image/png') return pngSize(data);
  return media === 'image/jpeg' ? jpegSize(data) : webpSize(data);
}

const PNG_SIGNATURE_BYTES = 8;

/** Walks the chunks from the header to the end mark: length, type, data, checksum of type and data. */
function pngSize(data: Buffer): ImageSize | null {
  if (data.length < 33 || data.toString('latin1', 12, 16) !== 'IHDR') return null;
  let pixels = false;
  for (let at = PNG_SIGNATURE_BYTES; at + 12 <= data.length; ) {
    const [length, type] = [data.readUInt32BE(at), data.toString('latin1', at + 4, at + 8)];
    const end = at + 12 + length;
    if (end > data.length || (isCritical(type) && crc32(data.subarray(at + 4, end - 4)) !== data.readUInt32BE(end - 4))) return null;
    if (type === 'IEND') return pixels ? sized(data.readUInt32BE(16), data.readUInt32BE(20)) : null;
    pixels ||= type === 'IDAT';
    at = end;
  }
  return null;
}

/** A chunk that must be understood to show the image has a capital first letter; what others hold is passed over. */
function isCritical(type: string): boolean {
  return /^[A-Z]/.test(type);
}

/** Walks the segments to the frame header and on to the scan; after it the end-of-image mark must come. */
function jpegSize(data: Buffer): ImageSize | null {
  let size: ImageSize | null = null;
  for (let at = 2; at + 4 <= data.length; ) {
    if (data[at] !== 0xff) return null;
    const marker = data[at + 1] ?? 0;
    // Any number of fill bytes may stand before a marker.
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (isFrameHeader(marker)) size = at + 9 <= data.length ? sized(data.readUInt16BE(at + 7), data.readUInt16BE(at + 5)) : null;
    if (marker === START_OF_SCAN) return data.includes(END_OF_IMAGE, at) ? size : null;
    at += 2 + data.readUInt16BE(at + 2);
  }
  return null;
}

const START_OF_SCAN = 0xda;
/** Within a scan a byte FF is followed by 00, so that this never stands in it by chance. */
const END_OF_IMAGE = Buffer.from([0xff, 0xd9]);

/** Start-of-frame markers are C0 to CF without DHT, JPG and DAC. */
function isFrameHeader(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
}

function webpSize(data: Buffer): ImageSize | null {
  if (data.length < 30 || data.readUInt32LE(4) + 8 > data.length || data.readUInt32LE(16) + 20 > data.length) return null;
  const kind = data.toString('latin1', 12, 16);
  if (kind === 'VP8X') return sized(1 + data.readUIntLE(24, 3), 1 + data.readUIntLE(27, 3));
  if (kind === 'VP8 ') return data.readUIntBE(23, 3) === 0x9d012a ? sized(data.readUInt16LE(26) & 0x3fff, data.readUInt16LE(28) & 0x3fff) : null;
  if (kind !== 'VP8L' || data[20] !== 0x2f) return null;
  const bits = data.readUInt32LE(21);
  return sized((bits & 0x3fff) + 1, ((bits >> 14) & 0x3fff) + 1);
}

function sized(width: number, height: number): ImageSize | null {
  return width > 0 && height > 0 ? { width, height } : null;
}
