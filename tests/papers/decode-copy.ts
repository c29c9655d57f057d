import { inflateSync } from 'node:zlib';

/** The points of a picture, three bytes each: red, green, blue. */
export interface Points {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

const DECODERS = 'pdfjs-dist/image_decoders/pdf.image_decoders.mjs';

/** Decodes a JPEG by the decoder of another project, which shares no code with the one that encodes. */
export async function jpegPoints(bytes: Uint8Array): Promise<Points> {
  const { JpegImage } = (await import(DECODERS)) as { readonly JpegImage: new () => JpegDecoder };
  const image = new JpegImage();
  image.parse(new Uint8Array(bytes));
  const { width, height } = image;
  return { width, height, rgb: image.getData({ width, height, forceRGB: true }) };
}

interface JpegDecoder {
  readonly width: number;
  readonly height: number;
  parse(bytes: Uint8Array): void;
  getData(options: { readonly width: number; readonly height: number; readonly forceRGB: boolean }): Uint8Array;
}

/** Decodes a PNG of eight bits a colour, not interlaced. Source: RFC 2083 s6 and s4.1 (from memory). */
export function pngPoints(bytes: Buffer): Points {
  const [width, height, depth, kind, interlace] = [bytes.readUInt32BE(16), bytes.readUInt32BE(20), bytes[24], bytes[25], bytes[28]];
  const channels = { 0: 1, 2: 3 }[kind ?? 9];
  if (depth !== 8 || channels === undefined || interlace !== 0) throw new Error('a kind of PNG that this decoder does not know');
  const chunks: Buffer[] = [];
  for (let at = 8; at < bytes.length; at += 12 + bytes.readUInt32BE(at)) if (bytes.toString('latin1', at + 4, at + 8) === 'IDAT') chunks.push(bytes.subarray(at + 8, at + 8 + bytes.readUInt32BE(at)));
  const [data, line] = [inflateSync(Buffer.concat(chunks)), width * channels];
  const raw = new Uint8Array(line * height);
  for (let y = 0; y < height; y += 1) unfilter(data, raw, y, line, channels);
  const rgb = channels === 3 ? raw : Uint8Array.from({ length: width * height * 3 }, (_, at) => raw[Math.floor(at / 3)] ?? 0);
  return { width, height, rgb };
}

function unfilter(data: Buffer, raw: Uint8Array, y: number, line: number, channels: number): void {
  const filter = data[y * (line + 1)] ?? 0;
  for (let x = 0; x < line; x += 1) {
    const left = x < channels ? 0 : (raw[y * line + x - channels] ?? 0);
    const above = y === 0 ? 0 : (raw[(y - 1) * line + x] ?? 0);
    const corner = y === 0 || x < channels ? 0 : (raw[(y - 1) * line + x - channels] ?? 0);
    const guess = [0, left, above, (left + above) >> 1, paeth(left, above, corner)][filter] ?? 0;
    raw[y * line + x] = ((data[y * (line + 1) + 1 + x] ?? 0) + guess) & 0xff;
  }
}

function paeth(left: number, above: number, corner: number): number {
  const guess = left + above - corner;
  const [a, b, c] = [Math.abs(guess - left), Math.abs(guess - above), Math.abs(guess - corner)];
  return a <= b && a <= c ? left : b <= c ? above : corner;
}

/** The JPEGs that a PDF holds as they are, in the order in which they stand in it. */
export function jpegsIn(pdf: Buffer): Buffer[] {
  const found: Buffer[] = [];
  for (let at = pdf.indexOf('/DCTDecode'); at >= 0; at = pdf.indexOf('/DCTDecode', at + 1)) {
    const from = pdf.indexOf('stream', at);
    const start = pdf.indexOf(Buffer.from([0xff, 0xd8]), from);
    found.push(pdf.subarray(start, pdf.indexOf('endstream', start)));
  }
  return found;
}
