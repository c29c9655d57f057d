import { crc32, deflateSync } from 'node:zlib';

const SIGNATURE = Buffer.from('89504e470d0a1a0a', 'hex');
const BYTES_A_PIXEL = 3;

/** A picture of whole pixels, row by row from the top, red, green and blue in a byte each. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

/**
 * A picture as PNG: 8 bits a channel, no filter, no date, nothing but the three chunks that must be there,
 * and an EXIF block where one is given.
 *
 * Source: PNG (ISO/IEC 15948), from memory; taken apart again in the tests.
 * @example pngBytes({ width: 1, height: 1, pixels: new Uint8Array([255, 0, 0]) })
 */
export function pngBytes({ width, height, pixels }: Picture, exif: Uint8Array | null = null): Uint8Array {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  // 8 bits, true colour, deflate, the one filter method, not interlaced.
  header.set([8, 2, 0, 0, 0], 8);
  const data = deflateSync(withFilterBytes(width, height, pixels), { level: 6 });
  return Buffer.concat([SIGNATURE, chunk('IHDR', header), ...(exif === null ? [] : [chunk('eXIf', exif)]), chunk('IDAT', data), chunk('IEND', Buffer.alloc(0))]);
}

/** Each row starts with a byte that names its filter; 0 is none. */
function withFilterBytes(width: number, height: number, pixels: Uint8Array): Uint8Array {
  const row = width * BYTES_A_PIXEL;
  const rows = new Uint8Array((row + 1) * height);
  for (let y = 0; y < height; y += 1) rows.set(pixels.subarray(y * row, (y + 1) * row), y * (row + 1) + 1);
  return rows;
}

function chunk(type: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(data.length, 0);
  framed.set(body, 4);
  framed.writeUInt32BE(crc32(body), body.length + 4);
  return framed;
}
