import type { Message } from '../result/result.ts';
import { BAG_DECLARATION, BAG_INFO, MANIFEST } from './bag.ts';
import { infoValues } from './bag-lines.ts';
import { readCanonical, type CanonicalFile } from './canonical-file.ts';
import { byPath, fileFault, type Fault, type FoundFile } from './check-fault.ts';
import { checkFiles, type CheckTools } from './check-files.ts';
import { checkEarlierSeals, checkGivenSeal } from './check-given-seal.ts';
import { checkJournal } from './check-journal.ts';
import { unreadableReport, type CheckReport, type PackToCheck, type WithheldField } from './check-report.ts';
import { checkPrevious } from './check-previous.ts';
import { checkPapers, checkRecords, unprovenPapers } from './check-records.ts';
import { checkSealCopies } from './check-seal-copies.ts';
import { sayBlackedOut } from './handed-paper.ts';
import { historyPartSchema, type HistoryPaper, type HistoryPart } from './history-part.ts';
import { rowsPartSchema, sealPartSchema, type RowsPart, type SealPart } from './journal-part.ts';
import { HISTORY, ROWS, SEAL, SIGNED_CONTENTS } from './pack-files.ts';
import type { SignedContents } from './signed-contents.ts';

interface Parts {
  readonly rows: RowsPart | null;
  readonly seal: SealPart | null;
  readonly history: HistoryPart | null;
  /** What keeps the others from being read. */
  readonly faults: readonly Fault[];
}

/**
 * Checks a pack: its container, its files, its journal, its records, and, where one is given, an earlier seal.
 *
 * @example checkPack({ found, container: [], excused: new Set(), base: null, givenSeal: null }, tools).faults //=> []
 */
export function checkPack(pack: PackToCheck, tools: CheckTools): CheckReport {
  const files = byPath(pack.found);
  if (!looksLikeAPack(files)) return unreadableReport(pack.container.length > 0 ? pack.container : [fileFault('not-a-pack', null, 'fault-not-a-pack')]);
  const listed = checkFiles(pack.found, tools);
  const parts = readParts(files);
  const given = givenReport(pack, parts, tools);
  const faults = [...pack.container, ...baseFaults(pack, listed.contents), ...listed.faults.filter((fault) => !isExcused(fault, pack.excused))];
  const inner = [...parts.faults, ...innerFaults(parts, listed.contents, files, tools)];
  const news = notFollowing(inner, new Set(faults.map((fault) => fault.path)));
  return {
    name: listed.contents?.name ?? parts.history?.name ?? null,
    composedOn: listed.contents?.composedOn ?? null,
    faults: [...faults, ...news.filter((fault) => !isExcused(fault, pack.excused)), ...given.faults],
    warnings: [...listed.warnings, ...paperWarnings(parts)],
    notes: [...given.notes, ...historyNotes(parts)],
    rows: parts.rows?.entries.length ?? 0,
    withheld: withheldFields(parts),
    seal: parts.seal?.seal ?? null,
  };
}

function looksLikeAPack(files: ReadonlyMap<string, FoundFile>): boolean {
  return [BAG_DECLARATION, MANIFEST, SIGNED_CONTENTS].some((path) => files.has(path));
}

/**
 * Where one of the files that the inner checks read is named already, what they find follows from it: only the rows of that very file
 * say more.
 */
function notFollowing(inner: readonly Fault[], named: ReadonlySet<string | null>): readonly Fault[] {
  const damaged = [ROWS, SEAL, HISTORY, BAG_INFO].filter((path) => named.has(path));
  if (damaged.length === 0) return inner.filter((fault) => !named.has(fault.path));
  return inner.filter((fault) => fault.row !== null && fault.path !== null && damaged.includes(fault.path));
}

function isExcused(fault: Fault, excused: ReadonlySet<string>): boolean {
  return fault.path !== null && excused.has(fault.path);
}

function baseFaults({ base }: PackToCheck, contents: SignedContents | null): Fault[] {
  const isGood = base === null || contents === null || base === contents.name;
  if (isGood) return [];
  return [fileFault('container', null, base === '' ? 'fault-no-base' : 'fault-base-renamed', { base, name: contents.name })];
}

function readParts(files: ReadonlyMap<string, FoundFile>): Parts {
  const rows = readCanonical(files, ROWS, rowsPartSchema);
  const seal = readCanonical(files, SEAL, sealPartSchema);
  const history = readCanonical(files, HISTORY, historyPartSchema);
  const read: readonly CanonicalFile<unknown>[] = [rows, seal, history];
  return { rows: rows.value, seal: seal.value, history: history.value, faults: read.flatMap((part) => part.fault ?? []) };
}

function innerFaults({ rows, seal, history }: Parts, contents: SignedContents | null, files: ReadonlyMap<string, FoundFile>, tools: CheckTools): Fault[] {
  const journal = [...(rows !== null && seal !== null ? checkJournal(rows, seal, tools) : []), ...(seal !== null ? [...checkEarlierSeals(seal, tools), ...headFaults(seal, contents)] : [])];
  return [
    ...journal,
    // Copies of a seal that is at fault itself say nothing more.
    ...(seal !== null && !journal.some((fault) => fault.path === SEAL) ? checkSealCopies(seal, files) : []),
    ...(rows !== null && history !== null ? [...checkRecords(history, rows), ...checkPrevious(history, rows, files)] : []),
    ...(history !== null ? [...checkPapers(history, files), ...dateFaults(history, contents, files)] : []),
  ];
}

/** The list of files and the journal are signed by one key, over one head. */
function headFaults({ seal, publicKey }: SealPart, contents: SignedContents | null): Fault[] {
  if (contents === null) return [];
  if (contents.publicKey !== publicKey) return [fileFault('bad-signature', SEAL, 'fault-two-keys')];
  const isSame = contents.treeSize === seal.treeSize && contents.root === seal.root;
  return isSame ? [] : [fileFault('wrong-root', SEAL, 'fault-two-heads')];
}

/** The pack's date and name stand in three files and are the same in all. */
function dateFaults(history: HistoryPart, contents: SignedContents | null, files: ReadonlyMap<string, FoundFile>): Fault[] {
  const bagged = infoValues(files.get(BAG_INFO)?.text ?? '', 'Bagging-Date')[0] ?? null;
  const dates = [bagged, contents?.composedOn ?? history.composedOn];
  const wrong = dates.find((date) => date !== history.composedOn);
  return wrong === undefined ? [] : [fileFault('wrong-date', HISTORY, 'fault-pack-date', { shown: history.composedOn, other: wrong })];
}

function givenReport({ givenSeal }: PackToCheck, { seal }: Parts, tools: CheckTools): { readonly faults: readonly Fault[]; readonly notes: readonly Message[] } {
  if (givenSeal === null) return { faults: [], notes: [{ key: 'note-no-given-seal', values: {} }] };
  return seal === null ? { faults: [], notes: [{ key: 'note-seal-unread', values: {} }] } : checkGivenSeal(givenSeal, seal, tools);
}

function paperWarnings({ rows, history }: Parts): Message[] {
  if (rows === null || history === null) return [];
  return unprovenPapers(history, rows).map((path) => ({ key: 'warning-paper-unproven', values: { path } }));
}

function historyNotes({ history }: Parts): Message[] {
  const { period } = history ?? {};
  const key = period?.from == null ? 'note-period-to' : period.to === null ? 'note-period-from' : 'note-period';
  const only = period === undefined ? [] : [{ key, values: { from: period.from, to: period.to } }];
  return [...only, ...(history?.papers ?? []).flatMap(paperNotes), ...(history?.sample === true ? [{ key: 'note-sample', values: {} }] : [])];
}

/** What was done to a paper before it was handed over, as its keeper says, and what of it is not proven. */
function paperNotes({ path, blackedOut, redactedFrom, namedIn }: HistoryPaper): Message[] {
  const black = blackedOut === undefined ? [] : [{ key: 'note-blacked-out', values: { path, parts: sayBlackedOut(blackedOut) } }];
  const unnamed = namedIn === undefined || redactedFrom !== null ? [] : [{ key: 'note-named-withheld', values: { path, rows: namedIn.join(', ') } }];
  return [...black, ...unnamed];
}

function withheldFields({ rows }: Parts): WithheldField[] {
  return (rows?.entries ?? []).flatMap(({ row, withheld }) => withheld.map((field) => ({ row: row.seq, field })));
}
