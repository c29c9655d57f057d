import sharp, { type Sharp } from 'sharp';
import type { Mark } from '../../shared-core/records/paper-redaction.ts';
import { openImage } from './decode-image.ts';
import { paintMarks } from './paint-marks.ts';
import type { PageImage } from './pdf-messages.ts';

/** A copy has no more points than this: all of them are held in memory while it is painted. */
const MOST_POINTS = 30_000_000;
const QUALITY = 92;
/** The side of the squares that a JPEG is coded in where its colours are not thinned out. */
const JPEG_SQUARE = 8;

/** How a copy is to look: turned clockwise by so many degrees, and black where it is then marked. */
export interface Blackening {
  readonly turned: number;
  readonly marks: readonly Mark[];
}

/**
 * A copy of an image that is decoded, turned, painted black where it is marked, and encoded anew, so that no note of a camera, no small picture
 * beside it and no point below a mark is left: a PNG of a PNG, exact to the point, a JPEG of all else. Null where it is broken.
 */
export async function redactImage(bytes: Uint8Array, media: string, how: Blackening): Promise<Uint8Array | null> {
  try {
    const { width, height } = (await openImage(bytes).metadata()).autoOrient;
    const scale = Math.min(1, Math.sqrt(MOST_POINTS / (width * height)));
    const turned = openImage(bytes).autoOrient().rotate(how.turned);
    const side = Math.max(1, Math.floor(Math.max(width, height) * scale));
    return await blackened(scale < 1 ? turned.resize({ width: side, height: side, fit: 'inside' }) : turned, how.marks, media === 'image/png');
  } catch {
    return null;
  }
}

/** A page that was drawn, turned, black where it is marked, as JPEG. */
export async function redactPageImage({ rgba, width, height }: PageImage, { turned, marks }: Blackening): Promise<Uint8Array> {
  return blackened(sharp(rgba, { raw: { width, height, channels: 4 } }).rotate(turned), marks, false);
}

/** Points that cannot be seen are hidden ones: what shows through is laid on white. */
async function blackened(image: Sharp, marks: readonly Mark[], exact: boolean): Promise<Uint8Array> {
  const { data, info } = await image.flatten({ background: '#ffffff' }).toColourspace('srgb').raw({ depth: 'uchar' }).toBuffer({ resolveWithObject: true });
  const { width, height, channels } = info;
  paintMarks({ data, width, height, channels }, marks, exact ? 1 : JPEG_SQUARE);
  const painted = sharp(data, { raw: { width, height, channels } });
  return (exact ? painted.png() : painted.jpeg({ quality: QUALITY, chromaSubsampling: '4:4:4' })).toBuffer();
}
