import { findHousehold } from '../../../shared-core/fleet/find-car.ts';
import { newEntry } from '../../../shared-core/journal/entry-kind.ts';
import { paperKept, papers, type Paper } from '../../../shared-core/records/paper.ts';
import { paperUses, type PaperUse } from '../../../shared-core/views/paper-uses.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { judgePaper } from '../../papers/judge-paper.ts';
import { writePapers } from '../../papers/write-papers.ts';
import type { HostContext } from '../host-context.ts';
import { writeDecision } from '../run-change.ts';

const BASE64 = /^[A-Za-z0-9+/]+={0,2}$/;

/** Keeps a paper that came as text, and looks into it when there is time. */
export async function keepPaper(context: HostContext, request: { readonly name: string; readonly base64: string }): Promise<Result<KeptPaper>> {
  if (!BASE64.test(request.base64) || request.base64.length % 4 !== 0) return refuse('paper-not-base64', {}, ['base64']);
  const [kept] = await keepPapers(context, [{ name: request.name, bytes: Buffer.from(request.base64, 'base64') }]);
  const answer = must(kept, 'an answer for the paper');
  if (answer.ok && !answer.value.known) context.papers.soon(context.household().folder, answer.value.paper, () => context.push({ kind: 'changed', stages: ['records'], cars: [] }));
  return answer;
}

/**
 * Keeps papers, and waits for the disk once for all of them; each is answered by itself. Their bytes are on disk before an entry is written, so
 * that no entry names a paper that is not there. They are looked into when they are first shown: a thousand photographs that are decoded while
 * they are kept would take the memory and the time of both.
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
  const entered = enterPapers(context, household, named.flatMap((one) => (one.ok ? [one.value] : [])));
  if (!entered.ok) return named.map((one) => (one.ok ? entered : one));
  const kept = new Map(entered.value.map((one) => [one.paper.id, one]));
  const told = new Set<string>();
  return named.map((one) => {
    if (!one.ok) return one;
    const first = !told.has(one.value.id);
    told.add(one.value.id);
    const answer = must(kept.get(one.value.id), 'an entry of each paper');
    return ok(first ? answer : { ...answer, known: true, undo: [] });
  });
}

/** Enters papers that are on disk, all in one step; what was kept before stays as it was. */
function enterPapers(context: HostContext, household: ReturnType<HostContext['household']>, found: readonly Paper[]): Result<readonly KeptPaper[]> {
  const fresh = new Map(found.filter((one) => household.facts.get(papers, one.id) === null).map((one) => [one.id, one]));
  const written = fresh.size === 0 ? null : writeDecision(context, () => ok({ entries: [...fresh.values()].map((one) => newEntry(paperKept, one)), reply: {} })) as Result<{ readonly undo: readonly number[] }>;
  if (written?.ok === false) return written;
  const undo = new Map([...fresh.keys()].map((id, at) => [id, written?.value.undo.slice(at, at + 1) ?? []]));
  const uses = paperUses(household.facts);
  return ok(found.map(({ id }) => ({ paper: must(household.facts.get(papers, id), 'paper that was kept'), known: !fresh.has(id), uses: [...(uses.get(id) ?? [])], undo: undo.get(id) ?? [] })));
}

/** A paper that is kept now, or was before. */
export interface KeptPaper {
  readonly paper: Paper;
  readonly known: boolean;
  readonly uses: PaperUse[];
  /** The entry by which it was kept now. */
  readonly undo: readonly number[];
}

/** The last part of a path, for some programs hand over the whole; the bytes are kept by digest, never by this name. */
function fileNameOnly(name: string): string {
  const parts = name.split(/[/\\]/).map((part) => part.trim());
  return parts.filter((part) => part !== '' && part !== '.' && part !== '..').at(-1) ?? 'paper';
}
