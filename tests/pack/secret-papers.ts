import PdfDocument from 'pdfkit';
import sharp from 'sharp';
import { pngChunk } from '../papers/small-files.ts';

/** A word that stands nowhere else. */
export const SECRET = 'QUIXNOMEN';

/** A JPEG whose camera noted the word, with a small picture of its own in the EXIF block that holds it too, and a comment after all that. */
export async function secretJpeg(width = 640, height = 400): Promise<Buffer> {
  const small = Buffer.concat([await sharp({ create: { width: 16, height: 16, channels: 3, background: 'red' } }).jpeg().toBuffer(), Buffer.from(`${SECRET} small picture`)]);
  const plain = await sharp({ create: { width, height, channels: 3, background: '#c8d0d8' } }).jpeg().withExif({ IFD0: { Artist: SECRET, ImageDescription: SECRET } }).toBuffer();
  const exif = Buffer.concat([Buffer.from(`Exif\0\0thumbnail ${SECRET}`), small]);
  const comment = Buffer.from(`comment ${SECRET}`);
  return Buffer.concat([plain.subarray(0, 2), segment(0xe1, exif), segment(0xfe, comment), plain.subarray(2)]);
}

function segment(marker: number, content: Buffer): Buffer {
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(content.length + 2, 2);
  return Buffer.concat([head, content]);
}

/** A PNG with the word in a text chunk and behind its end. */
export async function secretPng(width = 300, height = 200): Promise<Buffer> {
  const plain = await sharp({ create: { width, height, channels: 3, background: '#88aacc' } }).png().toBuffer();
  return Buffer.concat([plain.subarray(0, 33), pngChunk('tEXt', Buffer.from(`Comment\0${SECRET}`)), plain.subarray(33), Buffer.from(SECRET)]);
}

/**
 * A PDF of two pages with the word as text, as hidden text, in its information, as an attachment, in a note, in a picture's EXIF and in a state that a
 * later one took the place of.
 */
export async function secretPdf(): Promise<Buffer> {
  const document = new PdfDocument({ size: 'A5', info: { Title: `Invoice ${SECRET}`, Author: SECRET, Keywords: SECRET, CreationDate: new Date(0) } });
  const pieces: Buffer[] = [];
  document.on('data', (piece: Buffer) => pieces.push(piece));
  const ended = new Promise<Buffer>((resolve) => document.on('end', () => resolve(Buffer.concat(pieces))));
  document.fontSize(24).text(`To ${SECRET}`, 40, 60);
  document.fillOpacity(0).fontSize(10).text(`hidden ${SECRET}`, 40, 300).fillOpacity(1);
  document.image(await secretJpeg(64, 40), 40, 400, { width: 100 });
  document.note(40, 460, 40, 40, `note ${SECRET}`);
  document.file(Buffer.from(`attached ${SECRET}`), { name: `${SECRET}.txt`, description: SECRET });
  document.addPage().fontSize(24).text('Terms of the second page', 40, 60).text(`also ${SECRET}`, 40, 440);
  document.end();
  const first = await ended;
  // Bytes that an earlier state left, as an incremental update does.
  return Buffer.concat([first, Buffer.from(`\n% an earlier state of ${SECRET}\n%%EOF\n`)]);
}
