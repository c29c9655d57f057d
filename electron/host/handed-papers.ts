import { blackedOutPages, type HandedPaper } from '../../shared-core/handover/handed-paper.ts';
import type { PackFile } from '../../shared-core/handover/pack-files.ts';
import { safeFileName } from '../../shared-core/handover/pack-path.ts';
import { isWithin, type PackPeriod } from '../../shared-core/handover/pack-period.ts';
import type { Car } from '../../shared-core/fleet/car.ts';
import type { Facts } from '../../shared-core/journal/facts.ts';
import { paperName, paperNotes } from '../../shared-core/records/paper-note.ts';
import { paperRedactions } from '../../shared-core/records/paper-redaction.ts';
import { papers, type Paper } from '../../shared-core/records/paper.ts';
import { marksTurned } from '../../shared-core/records/turn-mark.ts';
import { must } from '../../shared-core/result/assert.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { sayRefusal } from '../../shared-core/result/words/say.ts';
import { papersOfCar } from '../../shared-core/views/papers-of-car.ts';
import { diskFile } from '../pack/measure-bytes.ts';
import type { RedactedCopy } from '../papers/kept-copy.ts';
import type { PaperDesk } from '../papers/paper-desk.ts';
import { readPaper } from '../papers/read-paper.ts';
import type { Blackening } from '../papers/redact-image.ts';
import { paperPath } from '../papers/write-paper.ts';
import { earlierPackWith } from './earlier-pack-with.ts';
import type { HouseholdFolder } from './household-folder.ts';

/** A chosen paper as a file of the pack: as it was kept, or, where parts of it are blacked out, a copy without them. */
export interface ChosenPaper {
  readonly paper: Paper;
  readonly file: PackFile;
  readonly copy: RedactedCopy | null;
  readonly handed: HandedPaper;
}

/** What of a choice is about papers. */
export interface PaperChoice {
  readonly papers: boolean;
  readonly onlyPapers: readonly string[] | null;
  readonly period: PackPeriod;
  /** The copies say by digest which papers they were made from. */
  readonly nameOriginals: boolean;
  /** What becomes of the packs of earlier keepers; null: nothing was said. */
  readonly previous: 'whole' | 'left-out' | null;
}

/** What is to be black on a paper, and how it is turned; null where nothing is. */
export function blackeningOf(facts: Facts, paper: string): Blackening | null {
  const redaction = facts.get(paperRedactions, paper);
  if (redaction === null) return null;
  const turned = facts.get(paperNotes, paper)?.turned ?? 0;
  return { turned, marks: marksTurned(redaction, turned) };
}

/**
 * The chosen papers of a car as files of its pack, numbered in order of date. Never is a paper that is marked handed over as it is: what cannot be
 * copied is refused `paper-not-redacted`, and `redacted-in-earlier-pack` what the pack of an earlier keeper holds whole.
 */
export async function chosenPapers({ household, desk }: { readonly household: HouseholdFolder; readonly desk: PaperDesk }, car: Car, choice: PaperChoice): Promise<Result<readonly ChosenPaper[]>> {
  const { facts, folder } = household;
  const only = choice.onlyPapers === null ? null : new Set(choice.onlyPapers);
  const strange = choice.onlyPapers?.find((id) => !papersOfCar(facts, car.id, () => true).includes(id));
  if (strange !== undefined) return refuse('paper-not-of-car', { paper: strange.slice(0, 64), car: car.name }, ['onlyPapers']);
  const ids = choice.papers ? papersOfCar(facts, car.id, (date) => isWithin(choice.period, date)).filter((id) => only === null || only.has(id)) : [];
  const earlier = choice.previous === 'left-out' ? null : earlierPackWith(household, ids.filter((id) => blackeningOf(facts, id) !== null), car.id);
  if (earlier !== null) return refuse('redacted-in-earlier-pack', { name: paperName(facts, must(facts.get(papers, earlier.paper), 'paper')), pack: earlier.pack });
  const chosen: ChosenPaper[] = [];
  for (const [at, id] of ids.entries()) {
    const paper = must(facts.get(papers, id), 'paper of a record');
    const [how, name] = [blackeningOf(facts, id), paperName(facts, paper)];
    if (how === null && readPaper(folder, id).state !== 'whole') return refuse('paper-not-whole', { name });
    const one = how === null ? ok(await asKept(folder, paper, name, at + 1)) : await asCopied({ desk, folder }, paper, at + 1, how);
    if (!one.ok) return one;
    chosen.push(one.value);
  }
  return ok(chosen);
}

/** How each paper of the household that is marked is spoken of, by its digest; its own name may say what is blacked out, and is never told. */
export function markedPapers(facts: Facts, chosen: readonly ChosenPaper[], { nameOriginals }: PaperChoice): ReadonlyMap<string, HandedPaper> {
  const left = facts.all(paperRedactions).map(({ id, marks }): [string, HandedPaper] => [id, { name: 'A paper of which parts are blacked out', path: null, sha256: nameOriginals ? id : null, blackedOut: blackedOutPages(marks) }]);
  return new Map([...left, ...chosen.flatMap(({ paper, copy, handed }) => (copy === null ? [] : [[paper.id, handed] as const]))]);
}

async function asKept(folder: string, paper: Paper, name: string, number: number): Promise<ChosenPaper> {
  const file = await diskFile(`data/papers/${numbered(number)}-${fileNameOf(paper, name)}`, paperPath(folder, paper.id));
  return { paper, file, copy: null, handed: { name, path: file.path, sha256: file.sha256, blackedOut: [] } };
}

/** The keeper's own name has no ending, which tells systems what to open a file with: the file's goes along. */
function fileNameOf(paper: Paper, name: string): string {
  const ending = /\.[a-z0-9]{1,8}$/i.exec(paper.name)?.[0] ?? '';
  if (name === paper.name || name.toLowerCase().endsWith(ending.toLowerCase())) return safeFileName(name, 80, 'paper');
  return safeFileName(`${safeFileName(name, 70, 'paper')}${ending}`, 80, 'paper');
}

const ENDINGS: Readonly<Record<RedactedCopy['media'], string>> = { 'application/pdf': 'pdf', 'image/jpeg': 'jpg', 'image/png': 'png' };

async function asCopied({ desk, folder }: { readonly desk: PaperDesk; readonly folder: string }, paper: Paper, number: number, how: Blackening): Promise<Result<ChosenPaper>> {
  const made = await desk.copy(folder, paper, how);
  if (!made.ok) return refuse('paper-not-redacted', { name: paper.name, why: sayRefusal(made.refusal) });
  const copy = made.value;
  const file = await diskFile(`data/papers/${numbered(number)}-parts-blacked-out.${ENDINGS[copy.media]}`, copy.path);
  if (file.sha256 !== copy.sha256) return refuse('paper-changed', { path: copy.path });
  return ok({ paper, file, copy, handed: { name: `Paper ${number}, parts blacked out`, path: file.path, sha256: file.sha256, blackedOut: blackedOutPages(how.marks) } });
}

function numbered(number: number): string {
  return String(number).padStart(4, '0');
}
