import { existsSync, readFileSync, rmSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { entryKinds } from '../../../shared-core/contract/entry-kinds.ts';
import type { ReplyOf } from '../../../shared-core/contract/contract.ts';
import { findHousehold } from '../../../shared-core/fleet/find-car.ts';
import type { PackToTakeIn, TakenIn } from '../../../shared-core/handover/pack-to-take-in.ts';
import { takeInPack } from '../../../shared-core/handover/take-in-pack.ts';
import { newEntry } from '../../../shared-core/journal/entry-kind.ts';
import { hexText } from '../../../shared-core/journal/hex-text.ts';
import { paperKept, papers, type Paper } from '../../../shared-core/records/paper.ts';
import { previousPacks } from '../../../shared-core/records/previous-pack.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { say } from '../../../shared-core/result/words/say.ts';
import { packCheckView, type PackCheckView } from '../../../shared-core/views/pack-check-view.ts';
import { checkPackAt } from '../../pack/check-pack.ts';
import { openSoundPack, type SoundPack } from '../../pack/sound-pack.ts';
import { judgePaper } from '../../papers/judge-paper.ts';
import { paperPath, writePaper } from '../../papers/write-paper.ts';
import { fileRefusal } from '../file-refusal.ts';
import type { HostContext } from '../host-context.ts';
import { sha256 } from '../node-digests.ts';
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
 * kept; where it is refused, nothing that it brought stays, and nothing that was here goes.
 */
export async function takeInHistoryPack(context: HostContext, request: TakeInRequest): Promise<Result<ReplyOf<'pack.take-in'>>> {
  const started = findHousehold(context.household().facts);
  if (!started.ok) return started;
  const written: string[] = [];
  let isTaken = false;
  try {
    const kept = keepBytes(context, resolve(request.pack), written);
    if (!kept.ok) return kept;
    const taken = await takeIn(context, request, { id: kept.value, sampleHousehold: started.value.sample, written });
    isTaken = taken.ok;
    return taken;
  } finally {
    if (!isTaken) removeWritten(context, written);
  }
}

/** Removes bytes that were newly written here, but for those that anything kept here names by now. */
function removeWritten(context: HostContext, written: readonly string[]): void {
  const { facts, folder } = context.household();
  const inUse = new Set([...facts.all(papers).map((paper) => paper.id), ...facts.all(previousPacks).map((one) => one.pack)]);
  for (const id of written.filter((one) => !inUse.has(one))) rmSync(paperPath(folder, id), { force: true });
}

/** Writes bytes among the papers, and notes them where none were there by that digest. */
function writeNoting(folder: string, bytes: Uint8Array, id: string, written: string[]): void {
  if (!existsSync(paperPath(folder, id))) written.push(id);
  writePaper(folder, bytes);
}

function keepBytes(context: HostContext, path: string, written: string[]): Result<string> {
  const { folder } = context.household();
  try {
    if (!existsSync(path)) return refuse('pack-not-found', { path });
    const found = statSync(path);
    if (!found.isFile()) return refuse('pack-not-a-file', { path });
    if (found.size > LARGEST_PACK_BYTES) return refuse('pack-too-large-to-take-in', { bytes: found.size, most: LARGEST_PACK_BYTES });
    const bytes = readFileSync(path);
    const id = hexText(sha256(bytes));
    writeNoting(folder, bytes, id, written);
    return ok(id);
  } catch (error) {
    return fileRefusal(error);
  }
}

interface KeptPack {
  readonly id: string;
  readonly sampleHousehold: boolean;
  /** Digests of what this call newly wrote. */
  readonly written: string[];
}

async function takeIn(context: HostContext, request: TakeInRequest, { id, sampleHousehold, written }: KeptPack): Promise<Result<ReplyOf<'pack.take-in'>>> {
  const { facts, folder, key } = context.household();
  const path = paperPath(folder, id);
  const report = await checkPackAt(path, request.seal);
  if (!report.ok) return report;
  const view = packCheckView(report.value);
  if (!view.sound) return refuse('pack-not-sound', { count: view.faults.length, first: faultsSaid(view) });
  const sound = await openSoundPack(path);
  if (!sound.ok) return sound;
  const { history } = sound.value;
  if (history.sample && !sampleHousehold && !request.sample) return refuse('pack-of-sample', { name: history.name });
  const pack: PackToTakeIn = {
    ...sound.value, digest: id, today: context.world.today(), ownFingerprint: key.fingerprint, papers: new Set(),
    sealed: report.value.notes.some((note) => note.key === 'note-given-agrees'),
  };
  // Decided before a paper is kept, and once more as all is written.
  const decided = takeInPack(entryKinds, facts, pack);
  if (!decided.ok) return decided;
  const keptPapers = await keepPapers(folder, sound.value, written);
  return write(context, { ...pack, papers: new Set(keptPapers.map((paper) => paper.id)) }, keptPapers, view);
}

function faultsSaid({ faults }: PackCheckView): string {
  return faults.map((fault) => `${fault.code}: ${fault.text}`).join('\n');
}

/** The papers of the pack become papers of this household; one that this household would not take stays in the pack alone. */
async function keepPapers(folder: string, pack: SoundPack, written: string[]): Promise<readonly Paper[]> {
  const kept: Paper[] = [];
  for (const { path, sha256: id } of pack.history.papers) {
    const bytes = await pack.read(path);
    const judged = bytes === null ? null : await judgePaper(bytes);
    if (bytes === null || judged?.ok !== true) continue;
    writeNoting(folder, bytes, id, written);
    kept.push({ id, name: (path.split('/').at(-1) ?? path).replace(/^\d{4}-/, '').slice(0, 120), media: judged.value, bytes: bytes.length });
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

function replyOf(taken: TakenIn, { history }: PackToTakeIn, { notes }: PackCheckView): Omit<ReplyOf<'pack.take-in'>, 'undo'> {
  const { car, records, readings, left } = taken;
  return { car, name: history.name, records, readings, left, notes: [...notes, ...moneyNotes(taken)] };
}

/** That amounts are in another currency, and what of them stays in the pack. */
function moneyNotes({ otherCurrency, pricesLeft }: TakenIn): string[] {
  const amounts = otherCurrency === undefined ? [] : [say({ key: otherCurrency === null ? 'taken-in-no-currency' : 'taken-in-other-currency', values: { currency: otherCurrency } })];
  return pricesLeft === 0 ? amounts : [...amounts, say({ key: 'taken-in-prices-left', values: { count: pricesLeft } })];
}
