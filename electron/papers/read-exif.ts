import exifr from 'exifr';
import type { CaptureTags } from '../../shared-core/records/capture-time.ts';

/** No camera's block is larger; what is, is not read. */
const LARGEST_BLOCK = 1_000_000;
const OPTIONS = { tiff: true, ifd0: {}, exif: true, gps: true, interop: false, ifd1: false, makerNote: false, userComment: false, reviveValues: false, translateValues: false, translateKeys: false, mergeOutput: false, sanitize: true } as const;

/** Tags by number. Source: CIPA DC-008 (Exif 3.0), 4.6.5 and 4.6.6. */
const TAG = { changed: 0x0132, original: 0x9003, digitized: 0x9004, offset: 0x9010, offsetOriginal: 0x9011, offsetDigitized: 0x9012, gpsTime: 0x0007, gpsDate: 0x001d } as const;

/**
 * The tags of an EXIF block that say when a picture was taken, as they stand in it; null where it cannot be read.
 *
 * @example await readExif(block) //=> { original: '2024:02:29 13:37:43', offsetOriginal: '+02:00', ... }
 */
export async function readExif(block: Uint8Array): Promise<CaptureTags | null> {
  if (block.length > LARGEST_BLOCK) return null;
  try {
    const read = (await exifr.parse(Buffer.from(block), OPTIONS)) as Blocks | undefined;
    const { ifd0, exif, gps } = read ?? {};
    const time = gps?.[TAG.gpsTime];
    return {
      original: text(exif?.[TAG.original]),
      offsetOriginal: text(exif?.[TAG.offsetOriginal]),
      digitized: text(exif?.[TAG.digitized]),
      offsetDigitized: text(exif?.[TAG.offsetDigitized]),
      changed: text(ifd0?.[TAG.changed]),
      offsetChanged: text(exif?.[TAG.offset]),
      gpsDate: text(gps?.[TAG.gpsDate]),
      gpsTime: Array.isArray(time) && time.length === 3 && time.every((part) => typeof part === 'number' && Number.isFinite(part)) ? (time as number[]) : null,
    };
  } catch {
    return null;
  }
}

interface Blocks {
  readonly ifd0?: Readonly<Record<number, unknown>>;
  readonly exif?: Readonly<Record<number, unknown>>;
  readonly gps?: Readonly<Record<number, unknown>>;
}

function text(value: unknown): string | null {
  return typeof value === 'string' && value.length <= 40 ? value : null;
}
