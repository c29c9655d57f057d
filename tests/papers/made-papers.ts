import PdfDocument from 'pdfkit';
import sharp from 'sharp';

/** A PDF of a page for each list of lines. */
export function pdfOf(...pages: readonly (readonly string[])[]): Promise<Buffer> {
  const document = new PdfDocument({ size: 'A5', autoFirstPage: false, info: { CreationDate: new Date(0) } });
  const pieces: Buffer[] = [];
  document.on('data', (piece: Buffer) => pieces.push(piece));
  const ended = new Promise<Buffer>((resolve) => document.on('end', () => resolve(Buffer.concat(pieces))));
  for (const lines of pages) {
    document.addPage();
    for (const line of lines) document.text(line);
  }
  document.end();
  return ended;
}

/** A PDF written by hand: its objects in order from 1, the first one its catalog. */
export function rawPdf(...objects: readonly (string | Buffer)[]): Buffer {
  const parts: Buffer[] = [Buffer.from('%PDF-1.4\n')];
  const at: number[] = [];
  const length = () => parts.reduce((sum, part) => sum + part.length, 0);
  objects.forEach((object, n) => {
    at.push(length());
    parts.push(Buffer.from(`${n + 1} 0 obj\n`), Buffer.from(object), Buffer.from('\nendobj\n'));
  });
  const start = length();
  const table = at.map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`).join('');
  parts.push(Buffer.from(`xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${table}trailer\n<< /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${start}\n%%EOF\n`));
  return Buffer.concat(parts);
}

/** A stream object with its dictionary. */
export function pdfStream(entries: string, data: Buffer): Buffer {
  return Buffer.concat([Buffer.from(`<< ${entries} /Length ${data.length} >>\nstream\n`), data, Buffer.from('\nendstream')]);
}

/** A photograph with what a camera notes; the left half is dark, so that turning is seen. */
export async function photograph(width: number, height: number, exif: Readonly<Record<string, string>> = {}, orientation = 1): Promise<Buffer> {
  const dark = await sharp({ create: { width: Math.floor(width / 2), height, channels: 3, background: '#101010' } }).png().toBuffer();
  const image = sharp({ create: { width, height, channels: 3, background: '#f0f0f0' } }).composite([{ input: dark, left: 0, top: 0 }]);
  return image.withExif({ IFD2: exif }).withMetadata({ orientation }).jpeg().toBuffer();
}
