import { findHousehold } from '../../../shared-core/fleet/find-car.ts';
import { newEntry } from '../../../shared-core/journal/entry-kind.ts';
import { paperKept, papers, type Paper } from '../../../shared-core/records/paper.ts';
import { paperUses, type PaperUse } from '../../../shared-core/views/paper-uses.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { judgePaper } from '../../papers/judge-paper.ts';
import { writePaper } from '../../papers/write-paper.ts';
import { fileRefusal } from '../file-refusal.ts';
import type { HostContext } from '../host-context.ts';
import { writeDecision } from '../run-change.ts';

const BASE64 = /^[A-Za-z0-9+/]+={0,2}$/;

/** Keeps a paper: its bytes are on disk before the entry is written, so that no entry names a paper that is not there. */
export async function keepPaper(context: HostContext, request: { readonly name: string; readonly base64: string }): Promise<Result<KeptPaper>> {
  if (!BASE64.test(request.base64) || request.base64.length % 4 !== 0) return refuse('paper-not-base64', {}, ['base64']);
  const bytes = Buffer.from(request.base64, 'base64');
  const judged = await judgePaper(bytes);
  if (!judged.ok) return judged;
  const household = context.household();
  const started = findHousehold(household.facts);
  if (!started.ok) return started;
  let id: string;
  try {
    id = writePaper(household.folder, bytes);
  } catch (error) {
    return fileRefusal(error);
  }
  const known = household.facts.get(papers, id);
  if (known !== null) return ok({ paper: known, known: true, uses: [...(paperUses(household.facts).get(id) ?? [])] });
  const paper: Paper = { id, name: fileNameOnly(request.name), media: judged.value, bytes: bytes.length };
  const written = writeDecision(context, () => ok({ entries: [newEntry(paperKept, paper)], reply: { paper, known: false, uses: [] } })) as Result<KeptPaper>;
  if (written.ok) context.papers.soon(household.folder, paper, () => context.push({ kind: 'changed', stages: ['records'], cars: [] }));
  return written;
}

interface KeptPaper {
  readonly paper: Paper;
  readonly known: boolean;
  readonly uses: PaperUse[];
}

/** The last part of a path, for some programs hand over the whole; the bytes are kept by digest, never by this name. */
function fileNameOnly(name: string): string {
  const parts = name.split(/[/\\]/).map((part) => part.trim());
  return parts.filter((part) => part !== '' && part !== '.' && part !== '..').at(-1) ?? 'paper';
}
