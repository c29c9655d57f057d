import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { Car } from '../../shared-core/fleet/car.ts';
import { carLeft } from '../../shared-core/fleet/departure.ts';
import { HOUSEHOLD_ID, households } from '../../shared-core/fleet/household.ts';
import { composePack, type Pack } from '../../shared-core/handover/compose-pack.ts';
import { namesAny } from '../../shared-core/handover/handed-paper.ts';
import type { HistoryPaper, HistoryPrevious } from '../../shared-core/handover/history-part.ts';
import { historyDocument } from '../../shared-core/handover/history-document.ts';
import { historySummary, type HistorySummary } from '../../shared-core/handover/history-summary.ts';
import { packEntry, sealPart, type KeptEntry } from '../../shared-core/handover/journal-part.ts';
import { bytesFile, PREVIOUS, type Digests, type PackFile } from '../../shared-core/handover/pack-files.ts';
import { safeFileName } from '../../shared-core/handover/pack-path.ts';
import { isWhole } from '../../shared-core/handover/pack-period.ts';
import { rowsOfPeriod } from '../../shared-core/handover/rows-of-period.ts';
import { OF_THE_SALE } from '../../shared-core/handover/withheld-fields.ts';
import type { Facts } from '../../shared-core/journal/facts.ts';
import type { Json } from '../../shared-core/journal/canonical-json.ts';
import { carSubject } from '../../shared-core/journal/entry-kind.ts';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { merkleTree, treeRoot } from '../../shared-core/journal/merkle-tree.ts';
import { rowSchema } from '../../shared-core/journal/row.ts';
import { makeSeal, type JournalHead } from '../../shared-core/journal/seal.ts';
import { paperName } from '../../shared-core/records/paper-note.ts';
import { previousPacks, type PackBefore, type PreviousPack } from '../../shared-core/records/previous-pack.ts';
import { tiedTo } from '../../shared-core/records/tied-papers.ts';
import { workAmended } from '../../shared-core/records/work-amended.ts';
import { must } from '../../shared-core/result/assert.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { historyOfCar } from '../../shared-core/views/history-of-car.ts';
import { drawDocument } from '../pack/draw-document.ts';
import { diskFile } from '../pack/measure-bytes.ts';
import { paperPictures } from '../pack/paper-pictures.ts';
import { printableDocument } from '../pack/printable-text.ts';
import { tableFiles } from '../pack/table-files.ts';
import type { PaperDesk } from '../papers/paper-desk.ts';
import { readPaper } from '../papers/read-paper.ts';
import { paperPath } from '../papers/write-paper.ts';
import { readHashes, readRowsOf } from '../store/journal-table.ts';
import { sealsGiven } from '../store/seal-table.ts';
import { chosenPapers, markedPapers, type ChosenPaper, type PaperChoice } from './handed-papers.ts';
import type { HouseholdFolder } from './household-folder.ts';
import { sha256, sha512 } from './node-digests.ts';

/** What the keeper chose for a pack. */
export interface PackChoice extends PaperChoice {
  readonly withhold: readonly string[];
  readonly cover: string | null;
  readonly paperSize: 'A4' | 'LETTER';
}

/** A pack ready to be written, and the head of the journal that it seals. */
export interface HistoryPack {
  readonly pack: Pack;
  /** The document as it stands in the pack, and what stands on its page of summary. */
  readonly pdf: Uint8Array;
  readonly summary: HistorySummary;
  readonly head: JournalHead;
}

/** What a pack is made from: the household, and where its papers are looked into. */
export interface PackSource {
  readonly household: HouseholdFolder;
  readonly desk: PaperDesk;
}

const DIGESTS: Digests = { sha256, sha512 };

/** Composes the history pack of a car: same household, same day, same choice, same bytes. */
export async function composeHistoryPack({ household, desk }: PackSource, car: Car, today: LocalDate, choice: PackChoice): Promise<Result<HistoryPack>> {
  const { store, facts, key } = household;
  const settings = must(facts.get(households, HOUSEHOLD_ID), 'household');
  const tree = merkleTree(readHashes(store), sha256);
  const head = { treeSize: tree.size, root: hexText(treeRoot(tree, sha256)) };
  const kept = rowsOfPeriod(keptEntries(household, car), choice.period);
  const withheld = new Set([...choice.withhold, ...(kept.some((one) => one.row.kind === carLeft.kind) ? OF_THE_SALE : [])]);
  const papersChosen = await chosenPapers({ household, desk }, car, choice);
  if (!papersChosen.ok) return papersChosen;
  const chosen = papersChosen.value;
  const cover = coverOf(facts, chosen, car, choice.cover);
  if (cover === null && choice.cover !== null) return refuse('cover-not-in-pack');
  const marked = markedPapers(facts, chosen, choice);
  const hidden: ReadonlySet<string> = new Set(choice.nameOriginals ? [] : marked.keys());
  const entries = kept.map((one) => packEntry(one, tree, (_row, field) => !withheld.has(field) && !namesAny(one.kept[field]?.value ?? null, hidden)));
  const before = earlierPacks(facts, car);
  const previous = choice.previous === 'left-out' ? [] : await previousFiles(household, before);
  if (previous === null) return refuse('previous-pack-not-whole');
  const keepers = previousTold(before, previous.map((one) => one.file.path));
  const told = historyOfCar(facts, car, {
    today, withheld, marked,
    cover: cover?.file.sha256 ?? null,
    period: choice.period,
    previous: keepers,
    papersLeftOut: leavesPapersOut(choice),
    sample: settings.sample,
    currency: settings.currency,
    amendments: amendmentsIn(kept),
    paperPaths: new Map(chosen.map(({ paper, file }) => [paper.id, file.path])),
    ...head,
    keyFingerprint: key.fingerprint,
  });
  const input = { ...told, unprinted: printableDocument(historyDocument(told)).places };
  const document = historyDocument(input);
  const pictures = await paperPictures({ desk, folder: household.folder }, chosen, cover);
  const pdf = await drawDocument(document, { made: today, size: choice.paperSize, pictures });
  const seals = sealsGiven(store).filter((one) => one.treeSize < head.treeSize).map((one) => makeSeal(one, key.fingerprint, key.sign));
  const composed = composePack({
    name: `${safeFileName(car.name.toLowerCase(), 60, 'car')}-history-${today}`,
    composedOn: today,
    sample: settings.sample,
    document: document as unknown as Json,
    status: input.status,
    entries,
    seal: sealPart(makeSeal(head, key.fingerprint, key.sign), key.publicKey, seals, tree),
    period: choice.period,
    currency: settings.currency,
    previous: keepers,
    papers: chosen.map((one) => historyPaper(one, kept, hidden, choice)),
    files: [bytesFile('data/history.pdf', pdf, DIGESTS), ...tableFiles(input, DIGESTS), ...chosen.map((one) => one.file), ...previous.map((one) => one.file)],
  }, DIGESTS, key.sign);
  return composed.ok ? { ok: true, value: { pack: composed.value, pdf, summary: historySummary(input), head } } : composed;
}

/** The photograph on the first page: the one chosen, else the first that is tied to the car as a whole or called by its name. */
function coverOf(facts: Facts, inPack: readonly ChosenPaper[], car: Car, chosen: string | null): ChosenPaper | null {
  const pictures = inPack.filter(({ paper }) => paper.media.startsWith('image/'));
  const ofCar = new Set([...tiedTo(facts, car.id, 'car').values()].flat());
  const first = pictures.find(({ paper }) => ofCar.has(paper.id)) ?? pictures.find(({ paper }) => paperName(facts, paper).toLowerCase().startsWith(car.name.toLowerCase()));
  return (chosen === null ? first : pictures.find(({ paper }) => paper.id === chosen)) ?? null;
}

/** A paper of the pack for programs; where the entries that name it keep that back, their rows are told. */
function historyPaper({ paper, file, copy, handed }: ChosenPaper, kept: ReturnType<typeof keptEntries>, hidden: ReadonlySet<string>, { nameOriginals }: PackChoice): HistoryPaper {
  const own = new Set([paper.id]);
  const rows = kept.filter((one) => Object.values(one.kept).some((field) => field !== null && namesAny(field.value, own) && namesAny(field.value, hidden))).map((one) => one.row.seq);
  return {
    path: file.path,
    sha256: file.sha256,
    redactedFrom: copy !== null && nameOriginals ? paper.id : null,
    ...(copy === null ? {} : { blackedOut: handed.blackedOut.map((page) => ({ ...page })) }),
    ...(rows.length === 0 ? {} : { namedIn: rows }),
  };
}

function keptEntries({ store }: HouseholdFolder, car: Car): readonly (KeptEntry & { readonly withdrawn: boolean })[] {
  return readRowsOf(store, carSubject(car.id)).map(({ row, values }) => ({
    withdrawn: row.withdrawnBy !== null,
    row: rowSchema.parse(JSON.parse(row.row)),
    kept: Object.fromEntries(values.map((one) => [one.name, { salt: one.salt, value: JSON.parse(one.value) as Json }])),
  }));
}

/** Why and when each record was amended, by the record's id; what was erased of it is told as erased. */
function amendmentsIn(kept: ReturnType<typeof keptEntries>): ReadonlyMap<string, readonly { at: string; why: string }[]> {
  const amended = kept.filter((one) => one.row.kind === workAmended.kind && !one.withdrawn).map((one) => {
    const said = (name: string) => (typeof one.kept[name]?.value === 'string' ? one.kept[name].value : null);
    return { id: said('id') ?? '', at: one.row.at, why: said('why') ?? 'erased' };
  });
  return Map.groupBy(amended, (one) => one.id);
}

/** The packs of earlier keepers, in the order of their dates. */
function earlierPacks(facts: Facts, car: Car): readonly PreviousPack[] {
  return [...facts.ofCar(previousPacks, car.id)].sort((a, b) => (a.composedOn < b.composedOn ? -1 : 1));
}

/** All earlier keepers' packs as this one names them: those with which the car came, each after those within it. */
function previousTold(packs: readonly PreviousPack[], paths: readonly string[]): readonly HistoryPrevious[] {
  return packs.flatMap((direct, at) => {
    const path = paths[at] ?? null;
    const told = (one: Pick<PackBefore, 'name' | 'composedOn' | 'rows' | 'pack' | 'period'>, where: Pick<HistoryPrevious, 'path' | 'within'>) => ({ name: one.name, composedOn: one.composedOn, rows: one.rows, sha256: one.pack, ...where, ...(one.period === undefined ? {} : { period: one.period }) });
    return [...(direct.before ?? []).map((one) => told(one, { path: null, within: one.handedOver ? path : null })), told(direct, { path, within: null })];
  });
}

/** Refused where the pack of an earlier keeper would hand over what is withheld, and nothing was said of it. */
export function previousSaid(facts: Facts, car: Car, choice: PackChoice): Result<null> {
  const [first] = earlierPacks(facts, car);
  const withholds = choice.withhold.length > 0 || !isWhole(choice.period) || leavesPapersOut(choice);
  return first === undefined || choice.previous !== null || !withholds ? ok(null) : refuse('previous-pack-shows-withheld', { name: first.name }, ['previous']);
}

function leavesPapersOut({ papers, onlyPapers }: PackChoice): boolean {
  return !papers || onlyPapers !== null;
}

/** The packs of earlier keepers as they were taken in; null where one is not whole. */
async function previousFiles({ folder }: HouseholdFolder, packs: readonly PreviousPack[]): Promise<readonly { readonly pack: PreviousPack; readonly file: PackFile }[] | null> {
  if (packs.some((one) => readPaper(folder, one.pack).state !== 'whole')) return null;
  return Promise.all(packs.map(async (pack, at) => ({ pack, file: await diskFile(`${PREVIOUS}${at + 1}-${safeFileName(pack.name, 80, 'pack')}.zip`, paperPath(folder, pack.pack)) })));
}
