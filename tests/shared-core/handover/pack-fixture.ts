import { createPrivateKey } from 'node:crypto';
import { ed25519Signer, rawPublicKey, sha256, sha512, verifyEd25519 } from '../../../electron/host/node-digests.ts';
import type { LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { isRead, type FoundFile } from '../../../shared-core/handover/check-fault.ts';
import { composePack, type Pack, type PackInput } from '../../../shared-core/handover/compose-pack.ts';
import { packEntry, sealPart, type KeptEntry, type ShowField } from '../../../shared-core/handover/journal-part.ts';
import { WHOLE_HISTORY } from '../../../shared-core/handover/pack-period.ts';
import { textFile, type PackFile } from '../../../shared-core/handover/pack-files.ts';
import { localDate } from '../../../shared-core/calendar/local-date.ts';
import type { Json } from '../../../shared-core/journal/canonical-json.ts';
import { composeRow } from '../../../shared-core/journal/compose-row.ts';
import { hexBytes, hexText } from '../../../shared-core/journal/hex-text.ts';
import { merkleTree, treeRoot, type MerkleTree } from '../../../shared-core/journal/merkle-tree.ts';
import { rowHash } from '../../../shared-core/journal/row.ts';
import { keyFingerprint, makeSeal, type Seal } from '../../../shared-core/journal/seal.ts';
import vectors from '../../reference/ed25519-rfc8032.json' with { type: 'json' };

export const DIGESTS = { sha256, sha512 };
export const TOOLS = { sha256, verify: verifyEd25519 };
export const PHOTO = 'a photograph that stands for any bytes';
export const PHOTO_DIGEST = hexText(sha256(Buffer.from(PHOTO)));

function keyOf(which: 0 | 1) {
  const seed = vectors.cases[which]?.seed ?? '';
  return createPrivateKey({ key: Buffer.from(`302e020100300506032b657004220420${seed}`, 'hex'), format: 'der', type: 'pkcs8' });
}

/** A signer with its public half, from the seeds of RFC 8032, so that every run gives the same bytes. */
export function householdKey(which: 0 | 1 = 0) {
  const publicKey = rawPublicKey(keyOf(which));
  return { publicKey, fingerprint: keyFingerprint(publicKey, sha256), sign: ed25519Signer(keyOf(which)) };
}

/** What an entry of a made-up journal says. */
export interface FixtureEntry {
  readonly subject: string;
  readonly kind: string;
  readonly values: Readonly<Record<string, Json>>;
}

/** Six entries: four of car pip, two of another car between them. */
const ENTRIES: readonly FixtureEntry[] = [
  { subject: 'car/pip', kind: 'car-set', values: { id: 'pip', name: 'Pip', year: 2022 } },
  { subject: 'car/moth', kind: 'car-set', values: { id: 'moth', name: 'Moth', year: 1972 } },
  { subject: 'car/pip', kind: 'reading-recorded', values: { id: 'r1', car: 'pip', date: '2026-03-01', shown: 40_000_000 } },
  { subject: 'car/pip', kind: 'paper-kept', values: { id: PHOTO_DIGEST, name: 'Receipt', bytes: PHOTO.length } },
  { subject: 'car/moth', kind: 'reading-recorded', values: { id: 'r2', car: 'moth', date: '2026-03-02', shown: 90_000_000 } },
  { subject: 'car/pip', kind: 'work-recorded', values: { id: 'w1', car: 'pip', date: '2026-03-03', title: 'Oil and filter', costs: [{ amountMinor: 4250 }], papers: [PHOTO_DIGEST] } },
];

/** The journal of the entries above, or of others, the values and salts beside each row. */
export function journal(entries: readonly FixtureEntry[] = ENTRIES): KeptEntry[] {
  const kept: KeptEntry[] = [];
  entries.forEach(({ subject, kind, values }, seq) => {
    const names = Object.keys(values);
    const salts = Object.fromEntries(names.map((name, at) => [name, (seq * 100 + at + 1).toString(16).padStart(32, '0')]));
    const before = kept.at(-1)?.row;
    const at = `2026-03-${String(seq + 1).padStart(2, '0')}T09:00:00.000Z`;
    const row = composeRow({ seq, at, kind, version: 1, subject, values, salts, prev: before === undefined ? null : rowHash(before, sha256) }, sha256);
    kept.push({ row, kept: Object.fromEntries(names.map((name) => [name, { value: values[name] ?? null, salt: salts[name] ?? '' }])) });
  });
  return kept;
}

export function treeOf(kept: readonly KeptEntry[]): MerkleTree {
  return merkleTree(kept.map(({ row }) => hexBytes(rowHash(row, sha256))), sha256);
}

export function sealOf(kept: readonly KeptEntry[], key = householdKey()): Seal {
  return makeSeal({ treeSize: kept.length, root: hexText(treeRoot(treeOf(kept), sha256)) }, key.fingerprint, key.sign);
}

export interface FixtureOptions {
  readonly show?: ShowField;
  readonly kept?: readonly KeptEntry[];
  readonly key?: ReturnType<typeof householdKey>;
  readonly earlier?: readonly Seal[];
  readonly sample?: boolean;
  readonly files?: readonly PackFile[];
  readonly change?: (input: PackInput) => PackInput;
}

export function onDate(text: string): LocalDate {
  const date = localDate(text);
  if (!date.ok) throw new Error(text);
  return date.value;
}

/** A pack of car pip, whole unless `change` breaks its input. */
export function pipPack(options: FixtureOptions = {}): Pack {
  const { show = () => true, kept = journal(), key = householdKey(), earlier = [], sample = false, change = (input) => input } = options;
  const tree = treeOf(kept);
  const files = [
    textFile('data/papers/receipt.jpg', PHOTO, DIGESTS),
    textFile('data/history.pdf', '%PDF stands for the drawn pages', DIGESTS),
    textFile('data/empty.csv', '', DIGESTS),
    ...(options.files ?? []),
  ];
  const input: PackInput = {
    name: 'pip-2026-11-25',
    composedOn: onDate('2026-11-25'),
    sample,
    document: { title: 'Pip' },
    status: null,
    entries: kept.filter(({ row }) => row.subject === 'car/pip').map((entry) => packEntry(entry, tree, show)),
    seal: sealPart(sealOf(kept, key), key.publicKey, earlier, tree),
    period: WHOLE_HISTORY,
    currency: null,
    previous: [],
    papers: [{ path: 'data/papers/receipt.jpg', sha256: PHOTO_DIGEST, redactedFrom: null }],
    files,
  };
  const pack = composePack(change(input), DIGESTS, key.sign);
  if (!pack.ok) throw new Error(pack.refusal.code);
  return pack.value;
}

/** The entry by which a car came with an earlier keeper's pack. */
export function takenInWith({ sha256: pack }: PackFile): FixtureEntry {
  return { subject: 'car/pip', kind: 'pack-taken-in', values: { id: 'pip-pack', car: 'pip', pack } };
}

/** That pack as the history names it. */
export function previousOf({ path, sha256: digest }: PackFile): PackInput['previous'] {
  return [{ name: 'pip', composedOn: onDate('2020-01-01'), rows: 4, sha256: digest, path, within: null }];
}

/** A pack of car pip, which came with an earlier keeper's pack. */
export function pipPackWith(previous: PackFile): Pack {
  return pipPack({ kept: journal([...ENTRIES, takenInWith(previous)]), files: [previous], change: (input) => ({ ...input, previous: previousOf(previous) }) });
}

/** The bytes of a pack's files by path. */
export function bytesOf(pack: Pack): Map<string, Buffer> {
  return new Map(pack.files.map(({ path, content }) => [path, content.kind === 'bytes' ? Buffer.from(content.bytes) : Buffer.from('')]));
}

/** Files as the check finds them. */
export function foundIn(files: ReadonlyMap<string, Buffer>): FoundFile[] {
  return [...files].map(([path, bytes]) => ({
    path,
    size: bytes.length,
    sha256: hexText(sha256(bytes)),
    sha512: hexText(sha512(bytes)),
    bytes: isRead(path) ? bytes : null,
    text: isRead(path) && Buffer.from(bytes.toString('utf8')).equals(bytes) ? bytes.toString('utf8') : null,
  }));
}
