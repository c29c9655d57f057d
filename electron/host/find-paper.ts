import { papers } from '../../shared-core/records/paper.ts';
import { readPaper } from '../papers/read-paper.ts';
import type { ComposedHost } from './compose-host.ts';

/** Finds a kept paper for showing: only one that is in the household, and only whole. */
export function paperFinder(host: ComposedHost): (id: string) => Promise<{ bytes: Uint8Array; mediaType: string } | null> {
  return (id) => {
    const { facts, folder } = host.context.household();
    const paper = facts.get(papers, id);
    const read = paper === null ? null : readPaper(folder, id);
    return Promise.resolve(paper !== null && read?.state === 'whole' ? { bytes: read.bytes, mediaType: paper.media } : null);
  };
}
