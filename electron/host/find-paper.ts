import { papers } from '../../shared-core/records/paper.ts';
import type { FindPaper } from '../loopback/paper-answer.ts';
import { readPaper } from '../papers/read-paper.ts';
import type { ComposedHost } from './compose-host.ts';
import { blackeningOf } from './handed-papers.ts';
import type { HostContext } from './host-context.ts';

/** Finds a kept paper for showing: only one that is in the household, and only whole. What is drawn of it is always a WebP of our own. */
export function paperFinder({ context }: ComposedHost): FindPaper {
  return async ({ sha256, part }) => {
    const { facts, folder } = context.household();
    const paper = facts.get(papers, sha256);
    if (paper === null) return null;
    if (part === 'whole') {
      const read = readPaper(folder, sha256);
      return read.state === 'whole' ? { bytes: read.bytes, mediaType: paper.media } : null;
    }
    const bytes = part === 'thumbnail' ? await context.papers.thumbnail(folder, paper) : part.of === 'paper' ? await context.papers.page(folder, paper, part.page) : await pageOfCopy(context, sha256, part.page);
    return bytes === null ? null : { bytes, mediaType: 'image/webp' };
  };
}

/** A page as it will be handed over; null where nothing of the paper is blacked out, for then there is no copy. */
async function pageOfCopy({ household, papers: desk }: HostContext, id: string, page: number): Promise<Uint8Array | null> {
  const { facts, folder } = household();
  const [paper, how] = [facts.get(papers, id), blackeningOf(facts, id)];
  if (paper === null || how === null) return null;
  const copy = await desk.copy(folder, paper, how);
  return copy.ok ? desk.copyPage(copy.value, page) : null;
}
