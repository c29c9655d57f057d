import { useRef, useState } from 'react';
import type { Result } from '../../shared-core/result/result.ts';
import { keepOnePaper } from '../ui/form/keep-papers.ts';
import { sayFault } from '../ui/form/say-fault.ts';
import { note } from '../ui/notices/notice-store.ts';
import { tell } from '../ui/words/tell.ts';
import type { Changed } from '../ui/change.ts';

/** Files being kept, and what came of those that were not, or were here already. */
export interface Keeping {
  readonly progress: { readonly done: number; readonly total: number; readonly name: string } | null;
  readonly outcome: readonly string[];
  readonly keep: (files: readonly File[]) => void;
  readonly closeOutcome: () => void;
}

/** Keeps files one after another, so that many take no more memory than one; each that is refused is named with its reason. */
export function useKeeping(): Keeping {
  const [progress, setProgress] = useState<Keeping['progress']>(null);
  const [outcome, setOutcome] = useState<readonly string[]>([]);
  const waiting = useRef<File[]>([]);
  const under = useRef(false);

  const run = async () => {
    under.current = true;
    const lines: string[] = [];
    const undo: number[] = [];
    let [done, kept] = [0, 0];
    for (let file = waiting.current.shift(); file !== undefined; file = waiting.current.shift()) {
      setProgress({ done: done + 1, total: done + 1 + waiting.current.length, name: file.name });
      const result = await keepOnePaper(file);
      done += 1;
      if (result.ok && !result.value.known) kept += 1;
      if (result.ok) undo.push(...result.value.undo);
      const line = lineOf(file, result);
      if (line !== null) lines.push(line);
    }
    under.current = false;
    setProgress(null);
    setOutcome(lines);
    if (kept > 0) note(tell('papers.kept', { n: kept }), undo);
  };

  return {
    progress,
    outcome,
    keep: (files) => {
      waiting.current.push(...files);
      if (!under.current && waiting.current.length > 0) void run();
    },
    closeOutcome: () => setOutcome([]),
  };
}

function lineOf(file: File, result: Result<Changed<'paper.keep'>>): string | null {
  if (!result.ok) return tell('papers.not-kept', { name: file.name, why: sayFault(result.refusal) });
  if (!result.value.known) return null;
  const [use] = result.value.uses;
  const where = use === undefined ? tell('papers.nowhere-yet') : tell('papers.with', { title: tell(`paper-use.${use.kind}`, { title: use.title }) });
  return tell('papers.here-already', { name: file.name, as: result.value.paper.name, where });
}
