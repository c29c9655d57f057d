import { previousPacks } from '../../shared-core/records/previous-pack.ts';
import { readPaper } from '../papers/read-paper.ts';
import type { HouseholdFolder } from './household-folder.ts';

/**
 * A pack of an earlier keeper that holds one of these papers whole; null where none does. It goes along byte for byte, so that nothing is
 * held back by blacking out a copy. A pack stores its files as they are, those of packs within it too: their bytes stand in it.
 */
export function earlierPackWith({ facts, folder }: Pick<HouseholdFolder, 'facts' | 'folder'>, papers: readonly string[], car: string | null = null): { readonly paper: string; readonly pack: string } | null {
  const packs = papers.length === 0 ? [] : facts.all(previousPacks).filter((one) => car === null || one.car === car);
  for (const { pack, name } of packs) {
    const whole = readPaper(folder, pack);
    if (whole.state !== 'whole') continue;
    const paper = papers.find((id) => {
      const read = readPaper(folder, id);
      return read.state === 'whole' && holds(whole.bytes, read.bytes);
    });
    if (paper !== undefined) return { paper, pack: name };
  }
  return null;
}

function holds(whole: Uint8Array, part: Uint8Array): boolean {
  const buffer = (bytes: Uint8Array) => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  return buffer(whole).includes(buffer(part));
}
