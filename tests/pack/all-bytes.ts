import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inflateSync, constants } from 'node:zlib';

/** Every file of a folder: its path and its bytes. */
export function filesIn(folder: string): { readonly path: string; readonly bytes: Buffer }[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).map((entry) => ({ path: join(entry.parentPath, entry.name), bytes: readFileSync(join(entry.parentPath, entry.name)) }));
}

/** What every zlib stream in some bytes holds, wherever one begins: streams of a PDF, the points of a PNG. */
export function inflated(bytes: Buffer): Buffer[] {
  const found: Buffer[] = [];
  for (let at = bytes.indexOf(0x78); at >= 0; at = bytes.indexOf(0x78, at + 1)) {
    // Source: RFC 1950 s2.2: the first two bytes, read as one number, are a multiple of 31.
    if (((bytes[at] ?? 0) * 256 + (bytes[at + 1] ?? 0)) % 31 !== 0) continue;
    try {
      const whole = inflateSync(bytes.subarray(at), { finishFlush: constants.Z_SYNC_FLUSH });
      if (whole.length > 8) found.push(whole);
    } catch {
      continue;
    }
  }
  return found;
}

/** The ways in which a word may be written: as it is, in lower case, in two bytes a letter, in hex, in base64. */
function writings(word: string): Buffer[] {
  const utf16 = Buffer.from(word, 'utf16le');
  return [word, word.toLowerCase()].flatMap((one) => [Buffer.from(one), Buffer.from(Buffer.from(one).toString('hex')), Buffer.from(Buffer.from(one).toString('hex').toUpperCase()), Buffer.from(Buffer.from(one).toString('base64').replace(/=+$/, '').slice(0, -1))])
    .concat([utf16, Buffer.from(utf16).swap16(), Buffer.from(Buffer.from(utf16).swap16().toString('hex').toUpperCase()), Buffer.from(Buffer.from(utf16).swap16().toString('hex'))]);
}

/** The files of a folder that hold a word in any writing, in their names, their bytes or a stream within them. */
export function holdersOf(folder: string, word: string): string[] {
  const wanted = writings(word);
  const holds = (bytes: Buffer) => wanted.some((one) => bytes.includes(one));
  return filesIn(folder).filter(({ path, bytes }) => holds(Buffer.from(path)) || holds(bytes) || inflated(bytes).some(holds)).map(({ path }) => path.slice(folder.length + 1));
}
