import { papers } from '../../../shared-core/records/paper.ts';
import { refuse, type Result } from '../../../shared-core/result/result.ts';
import { papersView, paperView, type PapersRequest, type PapersView, type PaperView } from '../../../shared-core/views/papers-view.ts';
import type { HostContext } from '../host-context.ts';

/** The list of papers, with what is known of their bytes so far; what is on the page and has not been looked into is next. */
export function showPapers(context: HostContext, request: PapersRequest): Result<PapersView> {
  const { facts, folder, store } = context.household();
  const view = store.transaction(() => papersView(facts, request, (id) => context.papers.known(folder, id), context.world.today())).deferred();
  if (!view.ok) return view;
  for (const { id, state } of view.value.papers) {
    const paper = state === 'unseen' ? facts.get(papers, id) : null;
    if (paper !== null) context.papers.soon(folder, paper, () => context.push({ kind: 'changed', stages: ['records'], cars: [] }));
  }
  return view;
}

/** One paper; it is looked into first where it has not been. */
export async function showPaper(context: HostContext, { paper: id }: { readonly paper: string }): Promise<Result<PaperView>> {
  const { facts, folder, store } = context.household();
  const paper = facts.get(papers, id);
  if (paper === null) return refuse('unknown-paper', { paper: id }, ['paper']);
  await context.papers.contents(folder, paper);
  return store.transaction(() => paperView(facts, id, (one) => context.papers.known(folder, one), context.world.today())).deferred();
}
