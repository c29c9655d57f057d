const [ASCII, LONG] = [2, 4];
const ENTRY_BYTES = 12;
const HEADER_BYTES = 8;

/**
 * An EXIF block that says when a photograph was taken, in local time and with its distance from UTC, and nothing else.
 *
 * Source: EXIF 2.31 s4.6 (tags 8769, 9003, 9011) over TIFF 6.0 s2; from memory, read again in the tests by another reader.
 * @example exifBlock('2026-07-04 10:42:07', '+01:00') //=> 'II*...2026:07:04 10:42:07...+01:00'
 */
export function exifBlock(at: string, offset: string): Uint8Array {
  const inner = HEADER_BYTES + 2 + ENTRY_BYTES + 4;
  const texts = inner + 2 + 2 * ENTRY_BYTES + 4;
  const [original, distance] = [`${at.replaceAll('-', ':')}\0`, `${offset}\0`];
  return Buffer.concat([
    Buffer.from('49492a0008000000', 'hex'),
    directory(entry(0x8769, LONG, 1, inner)),
    directory(entry(0x9003, ASCII, original.length, texts), entry(0x9011, ASCII, distance.length, texts + original.length)),
    Buffer.from(original + distance, 'latin1'),
  ]);
}

/** How many entries, the entries in order of their tags, and that no directory follows. */
function directory(...entries: readonly Buffer[]): Buffer {
  return Buffer.concat([Buffer.from([entries.length, 0]), ...entries, Buffer.alloc(4)]);
}

function entry(tag: number, type: number, count: number, value: number): Buffer {
  const bytes = Buffer.alloc(ENTRY_BYTES);
  bytes.writeUInt16LE(tag, 0);
  bytes.writeUInt16LE(type, 2);
  bytes.writeUInt32LE(count, 4);
  bytes.writeUInt32LE(value, 8);
  return bytes;
}
