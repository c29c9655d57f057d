import type { LocalDate } from '../calendar/local-date.ts';
import { canonicalJson, type Json } from '../journal/canonical-json.ts';
import type { SignEd25519 } from '../journal/digest.ts';
import { hexBytes } from '../journal/hex-text.ts';
import { sealText } from '../journal/seal-text.ts';
import { compareUtf8, utf8Bytes } from '../journal/utf8-text.ts';
import { assert } from '../result/assert.ts';
import { ok, refuse, type Result } from '../result/result.ts';
import { BAG_DECLARATION, BAG_DECLARATION_TEXT, BAG_INFO, MANIFEST, PAYLOAD, TAG_MANIFEST, bagInfoText, manifestText, type BagInfoLabel } from './bag.ts';
import { checkNote } from './check-note.ts';
import { historyRecord, type HistoryPaper, type HistoryPart, type HistoryPrevious } from './history-part.ts';
import type { HistoryStatus } from './history-status.ts';
import type { PackEntry, RowsPart, SealPart } from './journal-part.ts';
import { bytesFile, CHECK_NOTE, HISTORY, PUBLIC_KEY, ROWS, SEAL, SEAL_TEXT, SIGNATURE, SIGNED_CONTENTS, textFile, type Digests, type PackFile } from './pack-files.ts';
import { isWhole, sayPeriod, type PackPeriod } from './pack-period.ts';
import { packPathFault, pathLikeness } from './pack-path.ts';
import { publicKeyText } from './public-key-text.ts';
import { schemaFiles } from './schema-files.ts';
import { signedContentsText } from './signed-contents.ts';

/** What a pack is composed of. */
export interface PackInput {
  /** The name of the pack's folder and of its ZIP without the ending. */
  readonly name: string;
  readonly composedOn: LocalDate;
  /** The household is the invented one. */
  readonly sample: boolean;
  /** What the PDF is drawn from, for programs. */
  readonly document: Json;
  /** How the car stands, for programs; null where nothing is told of it. */
  readonly status: HistoryStatus | null;
  /** The car's rows, in the order of their numbers. */
  readonly entries: readonly PackEntry[];
  readonly seal: SealPart;
  /** The days shown. */
  readonly period: PackPeriod;
  /** The chosen papers, as the receiver gets them; each is also one of `files`. */
  readonly papers: readonly HistoryPaper[];
  /** The currency of its keeper's amounts; null where the journal says none. */
  readonly currency: string | null;
  /** The packs of all earlier keepers, in this one or not. */
  readonly previous: readonly HistoryPrevious[];
  /** Everything else under `data/`: the drawn PDF, the tables, the papers, earlier keepers' packs. */
  readonly files: readonly PackFile[];
}

/** A pack ready to be written: its files, sorted by the bytes of their paths. */
export interface Pack {
  readonly name: string;
  readonly files: readonly PackFile[];
}

/** What a plain ZIP can hold: below 4 GiB and 65 535 entries. Source: PKWARE APPNOTE 4.5.3 (from memory). */
export const MOST_BYTES = 4_000_000_000;
export const MOST_FILES = 60_000;

/**
 * The whole pack as a list of files: a BagIt bag with a signed list of its contents. Same input, same bytes.
 * Refused `pack-too-large` where it would not fit into a plain ZIP.
 *
 * Source: RFC 8493 (seen); the signed list as a tag file is our own.
 */
export function composePack(input: PackInput, digests: Digests, sign: SignEd25519): Result<Pack> {
  const payload = sorted([...input.files, ...programFiles(input, digests)]);
  assertGoodPaths(input, payload);
  const bytes = payload.reduce((sum, file) => sum + file.size, 0);
  if (bytes > MOST_BYTES || payload.length > MOST_FILES) return refuse('pack-too-large', { bytes, files: payload.length });
  const bag = [
    textFile(BAG_DECLARATION, BAG_DECLARATION_TEXT, digests),
    textFile(BAG_INFO, bagInfoText(infoLabels(input), payload), digests),
    textFile(MANIFEST, manifestText(payload), digests),
  ];
  const signed = signedFiles(input, [...payload, ...bag], digests, sign);
  const tags = [...bag, ...signed];
  return ok({ name: input.name, files: sorted([...payload, ...tags, textFile(TAG_MANIFEST, manifestText(tags), digests)]) });
}

/** The files under `data/` that are made here. */
function programFiles(input: PackInput, digests: Digests): PackFile[] {
  const rows: RowsPart = { format: 'trunnion-rows-1', entries: [...input.entries] };
  return [
    textFile(HISTORY, canonicalJson(historyPart(input)), digests),
    textFile(ROWS, canonicalJson(rows), digests),
    textFile(SEAL, canonicalJson(input.seal), digests),
    textFile(SEAL_TEXT, `${sealText(input.seal.seal)}\n`, digests),
    textFile(PUBLIC_KEY, publicKeyText(hexBytes(input.seal.publicKey)), digests),
    textFile(CHECK_NOTE, checkNote(input.sample), digests),
    ...schemaFiles(digests),
  ];
}

function historyPart({ name, composedOn, sample, document, status, period, papers, entries, currency, previous }: PackInput): HistoryPart {
  return {
    format: 'trunnion-history-1', name, composedOn, sample, document: document as HistoryPart['document'], papers: [...papers], records: entries.map(historyRecord),
    ...(status === null ? {} : { status }), ...(currency === null ? {} : { currency }), ...(previous.length === 0 ? {} : { previous: [...previous] }), ...(isWhole(period) ? {} : { period }),
  };
}

function infoLabels({ name, composedOn, sample, period }: PackInput): BagInfoLabel[] {
  const shown = sayPeriod(period);
  const labels: BagInfoLabel[] = [['Bagging-Date', composedOn], ['External-Identifier', name], ...(shown === null ? [] : [['Internal-Sender-Description', shown] as const])];
  return sample ? [...labels, ['External-Description', 'Sample of an invented household, proves nothing']] : labels;
}

function signedFiles(input: PackInput, files: readonly PackFile[], digests: Digests, sign: SignEd25519): PackFile[] {
  const { name, composedOn, seal } = input;
  const { treeSize, root } = seal.seal;
  const text = utf8Bytes(signedContentsText({ name, composedOn, publicKey: seal.publicKey, treeSize, root }, files));
  return [bytesFile(SIGNED_CONTENTS, text, digests), bytesFile(SIGNATURE, sign(text), digests)];
}

function sorted(files: readonly PackFile[]): PackFile[] {
  return [...files].sort((a, b) => compareUtf8(a.path, b.path));
}

/** Names are made by the stages before, so an unsafe one, or two that are alike, is our own bug. */
function assertGoodPaths({ name, papers, entries }: PackInput, payload: readonly PackFile[]): void {
  const paths = new Set(payload.map((file) => file.path));
  for (const path of paths) assert(path.startsWith(PAYLOAD) && packPathFault(`${name}/${path}`) === null, `a safe path: ${path}`);
  assert(!name.includes('/') && packPathFault(name) === null, 'a safe name for the pack');
  assert(new Set([...paths].map(pathLikeness)).size === payload.length, 'paths that differ on every system');
  assert(entries.every((entry, at) => entry.row.seq > (entries[at - 1]?.row.seq ?? -1)), 'rows in the order of their numbers');
  for (const paper of papers) assert(paths.has(paper.path), `the file of a paper: ${paper.path}`);
}
