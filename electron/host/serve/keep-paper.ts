import { findHousehold } from '../../../shared-core/fleet/find-car.ts';
import { newEntry } from '../../../shared-core/journal/entry-kind.ts';
import { paperKept, papers, type Paper } from '../../../shared-core/records/paper.ts';
import { paperUses, type PaperUse } from '../../../shared-core/views/paper-uses.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { judgePaper } from '../../papers/judge-paper.ts';
import { writePaper } from '../../papers/write-paper.ts';
import { writePapers } from '../../papers/write-papers.ts';
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

/**
 * Keeps several papers as `keepPaper` keeps one, and waits for the disk once for all of them; each is answered by itself. They are looked into
 * when they are first shown: a thousand photographs that are decoded while they are kept would take the memory and the time of both.
 */
export async function keepPapers(context: HostContext, files: readonly { readonly name: string; readonly bytes: Uint8Array }[]): Promise<readonly Result<KeptPaper>[]> {
  const judged = await Promise.all(files.map(({ bytes }) => judgePaper(bytes)));
  const household = context.household();
  const started = findHousehold(household.facts);
  if (!started.ok) return files.map(() => started);
  const written = await writePapers(household.folder, files.filter((_file, at) => judged[at]?.ok === true).map((file) => file.bytes));
  // Another household may have been opened meanwhile: what was written stays where it is and is entered nowhere.
  if (context.household().folder !== household.folder) return files.map(() => refuse('folder-unreachable', { why: household.folder }));
  const ids = written[Symbol.iterator]();
  const named = files.map(({ name, bytes }, at): Result<Paper> => {
    const media = must(judged[at], 'a judgement of each file');
    if (!media.ok) return media;
    const id = must(ids.next().value ?? null, 'a digest of each file that was written');
    return id.ok ? ok({ id: id.value, name: fileNameOnly(name), media: media.value, bytes: bytes.length }) : id;
  });
  const kept = new Map(enterPapers(context, household, named.flatMap((one) => (one.ok ? [one.value] : []))).map((one) => [one.paper.id, one]));
  const told = new Set<string>();
  return named.map((one) => {
    if (!one.ok) return one;
    const first = !told.has(one.value.id);
    told.add(one.value.id);
    const answer = must(kept.get(one.value.id), 'an entry of each paper');
    return ok(first ? answer : { ...answer, known: true });
  });
}

/** Enters papers that are on disk, all in one step; what was kept before stays as it was. */
function enterPapers(context: HostContext, household: ReturnType<HostContext['household']>, found: readonly Paper[]): readonly KeptPaper[] {
  const fresh = new Map(found.filter((one) => household.facts.get(papers, one.id) === null).map((one) => [one.id, one]));
  if (fresh.size > 0) must(writeDecision(context, () => ok({ entries: [...fresh.values()].map((one) => newEntry(paperKept, one)), reply: {} })).ok || null, 'refusal of a paper');
  const uses = paperUses(household.facts);
  return found.map((one) => ({ paper: must(household.facts.get(papers, one.id), 'paper that was kept'), known: !fresh.has(one.id), uses: [...(uses.get(one.id) ?? [])] }));
}

/** A paper that is kept now, or was before. */
export interface KeptPaper {
  readonly paper: Paper;
  readonly known: boolean;
  readonly uses: PaperUse[];
}

/** The last part of a path, for some programs hand over the whole; the bytes are kept by digest, never by this name. */
function fileNameOnly(name: string): string {
  const parts = name.split(/[/\\]/).map((part) => part.trim());
  return parts.filter((part) => part !== '' && part !== '.' && part !== '..').at(-1) ?? 'paper';
}
