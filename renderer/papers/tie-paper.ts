import { change } from '../ui/change.ts';
import { sayFault } from '../ui/form/say-fault.ts';
import { note } from '../ui/notices/notice-store.ts';
import { tell } from '../ui/words/tell.ts';

/** What a paper is to be put with. */
export interface TieTo {
  readonly kind: 'record' | 'observation' | 'obligation' | 'car';
  readonly id: string;
  readonly title: string;
}

/** Puts a paper with one or more things at once, and says so with the way back; whether it was done. */
export async function tiePaper(paper: string, to: readonly TieTo[]): Promise<boolean> {
  const result = await change('paper.tie', { paper, to: to.map(({ kind, id }) => ({ kind, id })) });
  const [first, ...more] = to;
  const done = more.length === 0 ? tell('paper.tied', { title: first?.title ?? '' }) : tell('paper.tied-many', { n: to.length });
  note(result.ok ? done : sayFault(result.refusal), result.ok ? result.value.undo : []);
  return result.ok;
}

/** Takes a paper from something again. */
export async function untiePaper(tie: string): Promise<void> {
  const result = await change('paper.untie', { tie });
  note(result.ok ? tell('paper.untied') : sayFault(result.refusal), result.ok ? result.value.undo : []);
}

/** Sets a paper aside, or puts it back into the inbox. */
export async function setAside(paper: string, name: string, aside: boolean): Promise<void> {
  const result = await change('papers.set-aside', { papers: [paper], aside });
  note(result.ok ? tell(aside ? 'paper.aside-done' : 'paper.aside-undone', { name }) : sayFault(result.refusal), result.ok ? result.value.undo : []);
}
