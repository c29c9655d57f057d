import type { z } from 'zod';
import { MOST_REDACTED_PAGES, type Mark } from '../../../shared-core/records/paper-redaction.ts';
import { papers } from '../../../shared-core/records/paper.ts';
import { decideRedaction, type redactPaperRequest } from '../../../shared-core/records/redact-paper.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { earlierPackWith } from '../earlier-pack-with.ts';
import type { HostContext } from '../host-context.ts';
import { writeDecision } from '../run-change.ts';

/** Marks the parts of a paper that are blacked out in what is handed over; only pages that can be drawn take a mark. */
export async function redactPaper(context: HostContext, request: z.output<typeof redactPaperRequest>): Promise<Result<{ marks: Mark[] }>> {
  const fit = request.marks.length === 0 ? ok(null) : await canBeMarked(context, request);
  if (!fit.ok) return fit;
  return writeDecision(context, () => decideRedaction(context.household().facts, request)) as Result<{ marks: Mark[] }>;
}

async function canBeMarked(context: HostContext, { paper: id, marks }: z.output<typeof redactPaperRequest>): Promise<Result<null>> {
  const { facts, folder } = context.household();
  const paper = facts.get(papers, id);
  if (paper === null) return refuse('unknown-paper', { paper: id }, ['paper']);
  const pages = (await context.papers.contents(folder, paper))?.pages ?? 0;
  if (pages === 0) return refuse('paper-not-drawn', {}, ['paper']);
  if (pages > MOST_REDACTED_PAGES) return refuse('too-many-pages', { pages, most: MOST_REDACTED_PAGES }, ['paper']);
  const beyond = marks.findIndex((mark) => mark.page > pages);
  if (beyond >= 0) return refuse('no-such-page', {}, ['marks', beyond, 'page']);
  const earlier = earlierPackWith(context.household(), [id]);
  return earlier === null ? ok(null) : refuse('redacted-in-earlier-pack', { name: paper.name, pack: earlier.pack }, ['paper']);
}
