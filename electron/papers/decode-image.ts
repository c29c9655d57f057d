import sharp, { type Sharp } from 'sharp';
import type { PageImage } from './pdf-messages.ts';

/** The same bound that a paper is judged by when it is kept. */
const MOST_POINTS = 250_000_000;
const PATIENCE_SECONDS = 15;

// One picture at a time and none remembered: memory is for the household, not for photographs.
sharp.cache(false);
sharp.concurrency(1);

/** An image as its header and its EXIF block describe it. */
export interface ImageFacts {
  /** As it is to be looked at: turned as its camera says. */
  readonly width: number;
  readonly height: number;
  /** The raw EXIF block from its TIFF header on; null where there is none. */
  readonly exif: Uint8Array | null;
}

/** Reads an image's size and EXIF block, without its points; null where it cannot be read. */
export async function describeImage(bytes: Uint8Array): Promise<ImageFacts | null> {
  try {
    const { autoOrient, exif } = await openImage(bytes).metadata();
    const block = exif === undefined ? null : exif.toString('latin1', 0, 6) === 'Exif\0\0' ? exif.subarray(6) : exif;
    return { width: autoOrient.width, height: autoOrient.height, exif: block };
  } catch {
    return null;
  }
}

/** An image, or points of a page, as a WebP no larger than so many points a side and free of what a camera noted; null where it is broken. */
export async function shrinkImage(source: Uint8Array | PageImage, longest: number): Promise<Uint8Array | null> {
  try {
    const image = source instanceof Uint8Array ? openImage(source).autoOrient() : sharp(source.rgba, { raw: { width: source.width, height: source.height, channels: 4 } });
    return await image.resize({ width: longest, height: longest, fit: 'inside', withoutEnlargement: true }).webp({ quality: 80, effort: 3 }).toBuffer();
  } catch {
    return null;
  }
}

/** An image about to be decoded, within bounds. What is cut short is broken; what a camera wrote loosely is not. */
export function openImage(bytes: Uint8Array): Sharp {
  return sharp(bytes, { failOn: 'truncated', limitInputPixels: MOST_POINTS, sequentialRead: true }).timeout({ seconds: PATIENCE_SECONDS });
}
