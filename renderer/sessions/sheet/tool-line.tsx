import type { JobSheet } from '../../../shared-core/views/job-sheet-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';

type Tool = JobSheet['tools'][number];

/** A tool with where it is, from whom it is borrowed, or that it is missing; of one that is on no list, its name alone. */
export function ToolLine({ tool }: { readonly tool: Tool }) {
  const words = useWords();
  return <span>{whereWords(tool, words.date)}{tool.lacking && <strong>, {tell(tool.state === 'missing' ? 'job.tool-missing' : 'job.tool-late')}</strong>}</span>;
}

function whereWords({ name, state, where, lender, until }: Tool, date: (day: string) => string): string {
  if (state === 'borrowed' && lender !== null) return tell(until === null ? 'job.tool-borrowed' : 'job.tool-borrowed-until', { tool: name, lender, date: until === null ? '' : date(until) });
  return where === null ? name : tell('job.tool-owned', { tool: name, where });
}
