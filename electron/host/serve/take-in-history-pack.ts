import { existsSync, readFileSync, rmSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import { findHousehold } from '../../../shared-core/fleet/find-car.ts';
import { takeInPack, type PackToTakeIn, type TakenIn } from '../../../shared-core/handover/take-in-pack.ts';
import { newEntry } from '../../../shared-core/journal/entry-kind.ts';
import { paperKept, papers, type Paper } from '../../../shared-core/records/paper.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { packCheckView, type PackCheckView } from '../../../shared-core/views/pack-check-view.ts';
import { checkPackAt } from '../../pack/check-pack.ts';
import { openSoundPack, type SoundPack } from '../../pack/sound-pack.ts';
import { judgePaper } from '../../papers/judge-paper.ts';
import { paperPath, writePaper } from '../../papers/write-paper.ts';
import { fileRefusal } from '../file-refusal.ts';
import type { HostContext } from '../host-context.ts';
import { writeDecision } from '../run-change.ts';

/** The largest pack taken in: it is held in memory while it is kept. */
export const LARGEST_PACK_BYTES = 500_000_000;

interface TakeInRequest {
  readonly pack: string;
  readonly seal: string | null;
  readonly sample: boolean;
}

/**
 * Takes in the pack of an earlier keeper. Its bytes are kept first and then checked where they are kept, so that what was checked is what is
 * kept; where it is refused, nothing of it stays.
 */
export async function takeInHistoryPack(context: HostContext, request: TakeInRequest): Promise<Result<ReplyOf<'pack.take-in'>>> {
  const started = findHousehold(context.household().facts);
  if (!started.ok) return started;
  const kept = keepBytes(context, resolve(request.pack));
  if (!kept.ok) return kept;
  const { id, isNew } = kept.value;
  const taken = await takeIn(context, request, id, started.value.sample);
  if (!taken.ok && isNew) rmSync(paperPath(context.household().folder, id), { force: true });
  return taken;
}

function keepBytes(context: HostContext, path: string): Result<{ readonly id: string; readonly isNew: boolean }> {
  const { folder } = context.household();
  try {
    if (!existsSync(path)) return refuse('pack-not-found', { path });
    const found = statSync(path);
    if (!found.isFile()) return refuse('pack-not-a-file', { path });
    if (found.size > LARGEST_PACK_BYTES) return refuse('pack-too-large-to-take-in', { bytes: found.size, most: LARGEST_PACK_BYTES });
    const bytes = readFileSync(path);
    const id = writePaper(folder, bytes);
    return ok({ id, isNew: !context.household().facts.all(papers).some((paper) => paper.id === id) });
  } catch (error) {
    return fileRefusal(error);
  }
}

async function takeIn(context: HostContext, request: TakeInRequest, id: string, sampleHousehold: boolean): Promise<Result<ReplyOf<'pack.take-in'>>> {
  const { folder, key } = context.household();
  const path = paperPath(folder, id);
  const report = await checkPackAt(path, request.seal);
  if (!report.ok) return report;
  const view = packCheckView(report.value);
  if (!view.sound) return refuse('pack-not-sound', { count: view.faults.length, first: faultsSaid(view) });
  const sound = await openSoundPack(path);
  if (!sound.ok) return sound;
  const { history } = sound.value;
  if (history.sample && !sampleHousehold && !request.sample) return refuse('pack-of-sample', { name: history.name });
  const keptPapers = await keepPapers(folder, sound.value);
  const pack: PackToTakeIn = {
    ...sound.value, digest: id, today: context.world.today(), ownFingerprint: key.fingerprint, papers: new Set(keptPapers.map((paper) => paper.id)),
    sealed: report.value.notes.some((note) => note.key === 'note-given-agrees'),
  };
  return write(context, pack, keptPapers, view);
}

function faultsSaid({ faults }: PackCheckView): string {
  return faults.map((fault) => `${fault.code}: ${fault.text}`).join('\n');
}

/** The papers of the pack become papers of this household; one that this household would not take stays in the pack alone. */
async function keepPapers(folder: string, pack: SoundPack): Promise<readonly Paper[]> {
  const kept: Paper[] = [];
  for (const { path, sha256 } of pack.history.papers) {
    const bytes = await pack.read(path);
    const judged = bytes === null ? null : await judgePaper(bytes);
    if (bytes === null || judged?.ok !== true) continue;
    writePaper(folder, bytes);
    kept.push({ id: sha256, name: (path.split('/').at(-1) ?? path).replace(/^\d{4}-/, '').slice(0, 120), media: judged.value, bytes: bytes.length });
  }
  return kept;
}

function write(context: HostContext, pack: PackToTakeIn, keptPapers: readonly Paper[], view: PackCheckView): Result<ReplyOf<'pack.take-in'>> {
  const { facts } = context.household();
  return writeDecision(context, () => {
    const taken = takeInPack(entryKinds, facts, pack);
    if (!taken.ok) return taken;
    const news = keptPapers.filter((paper) => facts.get(papers, paper.id) === null).map((paper) => newEntry(paperKept, paper));
    return ok({ entries: [...news, ...taken.value.entries], reply: replyOf(taken.value, pack, view) });
  }) as Result<ReplyOf<'pack.take-in'>>;
}

function replyOf({ car, records, readings, left }: TakenIn, { history }: PackToTakeIn, { notes }: PackCheckView): ReplyOf<'pack.take-in'> {
  return { car, name: history.name, records, readings, left, notes: [...notes] };
}
