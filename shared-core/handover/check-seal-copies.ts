import { hexBytes } from '../journal/hex-text.ts';
import { sealText } from '../journal/seal-text.ts';
import { fileFault, type Fault, type FoundFile } from './check-fault.ts';
import type { SealPart } from './journal-part.ts';
import { PUBLIC_KEY, SEAL_TEXT } from './pack-files.ts';
import { publicKeyText } from './public-key-text.ts';

/** Checks that the seal to read and the key for common tools say what the sealed journal says: a reader goes by those. */
export function checkSealCopies({ seal, publicKey }: SealPart, files: ReadonlyMap<string, FoundFile>): Fault[] {
  const copies = [[SEAL_TEXT, `${sealText(seal)}\n`], [PUBLIC_KEY, publicKeyText(hexBytes(publicKey))]] as const;
  return copies.flatMap(([path, text]) => {
    const file = files.get(path);
    if (file === undefined) return [fileFault('missing', path, 'fault-file-missing')];
    return file.text === text ? [] : [fileFault('changed', path, 'fault-seal-copy')];
  });
}
