import { crc32, deflateSync } from 'node:zlib';
import PdfDocument from 'pdfkit';

/** A grey PNG of a size; `said` is what its header says where that is another. */
export function png(width: number, height: number, said: { readonly width: number; readonly height: number } = { width, height }): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(said.width, 0);
  header.writeUInt32BE(said.height, 4);
  header[8] = 8;
  return Buffer.concat([Buffer.from('89504e470d0a1a0a', 'hex'), pngChunk('IHDR', header), pngChunk('IDAT', deflateSync(Buffer.alloc(height * (width + 1)))), pngChunk('IEND', Buffer.alloc(0))]);
}

/** A chunk of a PNG. Source: RFC 2083 s3.2 (from memory; what is made here was decoded by an independent program). */
export function pngChunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const whole = Buffer.alloc(body.length + 8);
  whole.writeUInt32BE(data.length, 0);
  body.copy(whole, 4);
  whole.writeUInt32BE(crc32(body), body.length + 4);
  return whole;
}

/** A segment of a JPEG: marker, length, content. */
export function jpegSegment(marker: number, ...content: readonly number[]): Buffer {
  return Buffer.from([0xff, marker, (content.length + 2) >> 8, (content.length + 2) & 0xff, ...content]);
}

const NONE = Array<number>(15).fill(0);

/**
 * A mid-grey JPEG of 8 by 8 points. One code of one bit says "no difference" and "end of block", so that the scan is two bits.
 * Source: ITU-T T.81 annex B and F (from memory; decoded by an independent program).
 */
export function jpeg(between: Buffer = Buffer.alloc(0)): Buffer {
  const ones = Array<number>(64).fill(1);
  return Buffer.concat([
    Buffer.from([0xff, 0xd8]),
    jpegSegment(0xe0, ...Buffer.from('JFIF\0'), 1, 1, 0, 0, 1, 0, 1, 0, 0),
    between,
    jpegSegment(0xdb, 0, ...ones),
    jpegSegment(0xc0, 8, 0, 8, 0, 8, 1, 1, 0x11, 0),
    jpegSegment(0xc4, 0x00, 1, ...NONE, 0),
    jpegSegment(0xc4, 0x10, 1, ...NONE, 0),
    jpegSegment(0xda, 1, 1, 0, 0, 63, 0),
    Buffer.from([0x3f, 0xff, 0xd9]),
  ]);
}

/** WebP files of 7 by 5 red points, made by an independent program: lossy, lossless, and with transparency. */
export const WEBP = {
  lossy: Buffer.from('524946463c000000574542505650382030000000d001009d012a0700050002003425a00274ba01f80003b000fef0c40bff20b96175c8d7ff203fe407fc80fff8f2000000', 'hex'),
  lossless: Buffer.from('524946461c000000574542505650384c0f0000002f060001000710fd8ffe0722a2ff0100', 'hex'),
  transparent: Buffer.from('524946466000000057454250565038580a00000010000000060000040000414c50480a0000000107d0bf88084444ff035650382030000000d001009d012a0700050002003425a00274ba01f80003b000fef0c40bff20b96175c8d7ff203fe407fc80fff8f2000000', 'hex'),
} as const;

/** A PDF of one page with a line of text. */
export function pdf(): Promise<Buffer> {
  const document = new PdfDocument({ size: 'A4', info: { CreationDate: new Date(0) } });
  const pieces: Buffer[] = [];
  document.on('data', (piece: Buffer) => pieces.push(piece));
  const ended = new Promise<Buffer>((resolve) => document.on('end', () => resolve(Buffer.concat(pieces))));
  document.text('A receipt');
  document.end();
  return ended;
}
