import { HISTORY, ROWS, SEAL, SIGNATURE, SIGNED_CONTENTS } from '../../shared-core/handover/pack-files.ts';
import { isRead } from '../../shared-core/handover/check-fault.ts';
import { makeSeal, type Seal } from '../../shared-core/journal/seal.ts';
import { must } from '../../shared-core/result/assert.ts';
import { bytesOf, householdKey, journal, pipPack } from '../shared-core/handover/pack-fixture.ts';
import { editJson, editRows, refit, signOver, sortedEntries, zipByAnother, zipFiles, zipInOrder, type Files, type ZipEntry } from './alter-pack.ts';
import { previousPath, type Dice, type SeededPack } from './seeded-pack.ts';

/** A pack with one fault, and what a check must say of it. */
export interface BrokenPack {
  readonly zip: Buffer;
  /** Every fault, as code, path and row, in any order; or one code at one path, where all else must be of that path too. */
  readonly expected: Expected;
}

type Expected =
  | { readonly kind: 'exactly'; readonly named: readonly string[] }
  | { readonly kind: 'at'; readonly code: string; readonly path: string | null }
  /** Nothing that a check can name without this seal. */
  | { readonly kind: 'by-seal'; readonly seal: Seal };

type Break = (seeded: SeededPack, dice: Dice) => BrokenPack | Promise<BrokenPack>;

const MANIFEST = 'manifest-sha512.txt';
const exactly = (zip: Buffer, ...named: string[]): BrokenPack => ({ zip, expected: { kind: 'exactly', named } });
const at = (zip: Buffer, code: string, path: string | null): BrokenPack => ({ zip, expected: { kind: 'at', code, path } });

const filesOf = ({ pack }: SeededPack): Files => bytesOf(pack);
const zipped = ({ pack }: SeededPack, files: Files): Buffer => zipFiles(pack.name, files);
const own = (seeded: SeededPack): Buffer => zipped(seeded, filesOf(seeded));

/** Files that are measured only: what is in them is nobody's but their own. */
function plainFile(files: Files, dice: Dice): ZipEntry {
  return dice.one([...files].filter(([path, bytes]) => path.startsWith('data/') && !isRead(path) && bytes.length > 0 && path !== previousPath));
}

function flipped(bytes: Buffer, place: number, bit: number): Buffer {
  return Buffer.from(bytes.with(place, must(bytes[place], 'byte') ^ (1 << bit)));
}

/** Where each entry of a ZIP of ours stands: its header, its bytes, and its record in the directory. */
function places(base: string, files: Files) {
  let [start, record] = [0, 0];
  const entries = sortedEntries(files).map(([path, bytes]) => {
    const header = start;
    const body = header + 30 + Buffer.byteLength(`${base}/${path}`);
    start = body + bytes.length;
    return { path, header, body, end: start };
  });
  record = start;
  return entries.map((entry) => {
    const from = record;
    record += 46 + Buffer.byteLength(`${base}/${entry.path}`);
    return { ...entry, record: from, recordEnd: record };
  });
}

function flipInContents(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const entry = dice.one(places(seeded.pack.name, files).filter(({ body, end, path }) => end > body && path !== previousPath));
  return at(flipped(own(seeded), dice.whole(entry.body, entry.end - 1), dice.whole(0, 7)), 'changed', entry.path);
}

/** Not in a name, which would be a fault of two paths, nor in the size or place that a reader finds the next header by. */
function flipInStructure(seeded: SeededPack, dice: Dice): BrokenPack {
  const entry = dice.one(places(seeded.pack.name, filesOf(seeded)));
  const inHeader = dice.chance(50);
  const place = inHeader ? entry.header + dice.whole(4, 17) : entry.record + dice.whole(4, 19);
  return at(flipped(own(seeded), place, dice.whole(0, 7)), 'container', entry.path);
}

function cut(seeded: SeededPack, dice: Dice): BrokenPack {
  const entry = dice.one(places(seeded.pack.name, filesOf(seeded)).filter(({ body, end }) => end > body));
  return exactly(own(seeded).subarray(0, dice.whole(entry.body, entry.end - 1)), `truncated ${entry.path}`);
}

function tail(seeded: SeededPack, dice: Dice): BrokenPack {
  return at(Buffer.concat([own(seeded), Buffer.alloc(dice.whole(1, 50), dice.whole(0, 255))]), 'container', null);
}

function removed(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const path = dice.one([...files.keys()].filter((one) => ![SIGNED_CONTENTS, SIGNATURE].includes(one)));
  files.delete(path);
  return exactly(zipped(seeded, files), `missing ${path}`);
}

function added(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const path = dice.one(['data/papers/9999-other.pdf', 'readme.txt', 'data/journal/more.json', 'data/x', 'fetch.txt']);
  files.set(path, Buffer.from(dice.one(['', 'new', '{}'])));
  return exactly(zipped(seeded, files), `added ${path}`);
}

function renamed(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const [path, bytes] = plainFile(files, dice);
  files.delete(path);
  files.set(`data/${dice.one(['a', 'papers/b', 'z/c'])}-${dice.whole(1, 99)}`, bytes);
  return exactly(zipped(seeded, files), `renamed ${path}`);
}

function swapped(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const [one, first] = plainFile(files, dice);
  const others = [...files].filter(([path, bytes]) => path.startsWith('data/') && !isRead(path) && path !== one && bytes.length > 0 && path !== previousPath);
  const [other, second] = dice.one(others);
  files.set(one, second).set(other, first);
  return exactly(zipped(seeded, files), `reordered ${one}`, `reordered ${other}`);
}

function shortened(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const [path, bytes] = plainFile(files, dice);
  files.set(path, bytes.subarray(0, dice.whole(0, bytes.length - 1)));
  return exactly(zipped(seeded, files), `truncated ${path}`);
}

function lengthened(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const [path, bytes] = plainFile(files, dice);
  files.set(path, Buffer.concat([bytes, Buffer.alloc(dice.whole(1, 30), 10)]));
  return exactly(zipped(seeded, files), `changed ${path}`);
}

function changedAndFitted(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const [path, bytes] = plainFile(files, dice);
  files.set(path, flipped(bytes, dice.whole(0, bytes.length - 1), dice.whole(0, 7)));
  refit(files);
  return exactly(zipped(seeded, files), `changed ${path}`, `changed ${MANIFEST}`);
}

/** A file taken away, put in or renamed, with count and manifests made to fit: the signed list still names it. */
function movedAndFitted(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const [path, bytes] = plainFile(files, dice);
  const how = dice.one(['missing', 'added', 'renamed'] as const);
  if (how !== 'added') files.delete(path);
  if (how !== 'missing') files.set('data/other', how === 'added' ? Buffer.from('other') : bytes);
  refit(files);
  const counted = how === 'renamed' ? [] : ['changed bag-info.txt'];
  return exactly(zipped(seeded, files), `${how} ${how === 'added' ? 'data/other' : path}`, `changed ${MANIFEST}`, ...counted);
}

async function packedAgain(seeded: SeededPack, dice: Dice): Promise<BrokenPack> {
  const files = filesOf(seeded);
  if (dice.chance(50)) return exactly(await zipByAnother(seeded.pack.name, files), 'container -');
  const [path] = plainFile(files, dice);
  files.set(path, Buffer.from('another paper altogether, and a longer one than any text of these files is, by far'.repeat(9)));
  refit(files);
  return exactly(await zipByAnother(seeded.pack.name, files), 'container -', `changed ${path}`, `changed ${MANIFEST}`, 'changed bag-info.txt');
}

function entriesMoved(seeded: SeededPack, dice: Dice): BrokenPack {
  const entries = sortedEntries(filesOf(seeded));
  const which = dice.whole(0, entries.length - 2);
  const [path, bytes] = must(entries[which], 'entry');
  if (dice.chance(50)) return exactly(zipInOrder(seeded.pack.name, [...entries.toSpliced(which, 1), [path, bytes]]), `container ${path}`);
  return exactly(zipInOrder(seeded.pack.name, entries.toSpliced(which, 0, [path, bytes])), `container ${path}`);
}

const rowsOf = (seeded: SeededPack): number[] => seeded.kept.filter(({ row }) => row.subject === 'car/pip').map(({ row }) => row.seq);

/** A row that only one of rows and history still tells; both are signed by the household itself. */
function rowLeftOut(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const seq = dice.one(rowsOf(seeded));
  const fromRows = dice.chance(50);
  if (fromRows) editRows(files, (entries) => entries.splice(entries.findIndex(({ row }) => row.seq === seq), 1));
  else editJson<{ records: { row: number }[] }>(files, HISTORY, ({ records }) => records.splice(records.findIndex(({ row }) => row === seq), 1));
  signOver(files);
  return exactly(zipped(seeded, files), `${fromRows ? 'added' : 'missing'} ${HISTORY} row ${seq}`);
}

function rowsReordered(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const first = dice.whole(0, rowsOf(seeded).length - 2);
  const inRows = dice.chance(50);
  const swap = <One>(list: One[]) => list.splice(first, 2, must(list[first + 1], 'second'), must(list[first], 'first'));
  if (inRows) editRows(files, swap);
  else editJson<{ records: object[] }>(files, HISTORY, ({ records }) => swap(records));
  signOver(files);
  return exactly(zipped(seeded, files), `reordered ${inRows ? ROWS : HISTORY} row ${rowsOf(seeded)[first] ?? -1}`);
}

function rowEdited(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const seq = dice.one(rowsOf(seeded));
  editRows(files, (entries) => {
    const shown = must(entries.find(({ row }) => row.seq === seq), 'row').shown;
    const name = dice.one(Object.keys(shown));
    shown[name] = { salt: must(shown[name], name).salt, value: `altered ${dice.whole(1, 9)}` };
  });
  signOver(files);
  return exactly(zipped(seeded, files), `changed ${ROWS} row ${seq}`, `changed ${HISTORY} row ${seq}`);
}

/** An earlier moment in the row itself: its proof fails, so does the next row that follows it by its hash, and the history says another. */
function rowDated(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const rows = rowsOf(seeded);
  const seq = dice.one(rows);
  editRows(files, (entries) => Object.assign(must(entries.find(({ row }) => row.seq === seq), 'row').row, { at: '2020-01-01T09:00:00.000Z' }));
  signOver(files);
  const follows = rows.includes(seq + 1) ? [`wrong-proof ${ROWS} row ${seq + 1}`] : [];
  return exactly(zipped(seeded, files), `wrong-proof ${ROWS} row ${seq}`, ...follows, `wrong-date ${HISTORY} row ${seq}`);
}

/** The history tells another moment for a record, or another date for the pack. */
function wrongDate(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const seq = dice.chance(50) ? dice.one(rowsOf(seeded)) : null;
  editJson<{ composedOn: string; records: { row: number; entered: string }[] }>(files, HISTORY, (history) => {
    if (seq === null) history.composedOn = `2025-0${dice.whole(1, 9)}-10`;
    else must(history.records.find(({ row }) => row === seq), 'record').entered = '2020-01-01T09:00:00.000Z';
  });
  signOver(files);
  return exactly(zipped(seeded, files), `wrong-date ${HISTORY}${seq === null ? '' : ` row ${seq}`}`);
}

function sealSpoiled(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const signature = dice.whole(0, 9).toString().repeat(128);
  editJson<{ seal: Seal }>(files, SEAL, (part) => Object.assign(part, { seal: { ...seeded.seal, signature } }));
  signOver(files);
  return exactly(zipped(seeded, files), `bad-signature ${SEAL}`);
}

/** Well signed, over another root than that of the rows. */
function otherRoot(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const { fingerprint, sign } = householdKey();
  const root = dice.whole(0, 9).toString().repeat(64);
  const seal = makeSeal({ treeSize: seeded.kept.length, root }, fingerprint, sign);
  editJson<{ seal: Seal; earlier: [] }>(files, SEAL, (part) => Object.assign(part, { seal, earlier: [] }));
  signOver(files, householdKey(), { root });
  return exactly(zipped(seeded, files), `wrong-root ${SEAL}`);
}

function proofEdited(seeded: SeededPack, dice: Dice): BrokenPack {
  const files = filesOf(seeded);
  const seq = dice.one(rowsOf(seeded));
  editRows(files, (entries) => {
    const { proof } = must(entries.find(({ row }) => row.seq === seq), 'row');
    if (dice.chance(50)) proof.pop();
    else proof.splice(dice.whole(0, proof.length - 1), 1, 'ab'.repeat(32));
  });
  signOver(files);
  return exactly(zipped(seeded, files), `wrong-proof ${ROWS} row ${seq}`);
}

function noPack(_seeded: SeededPack, dice: Dice): BrokenPack {
  const text = Buffer.from('a letter '.repeat(dice.whole(1, 90)));
  return exactly(dice.chance(50) ? text : zipInOrder('papers', [['data/letter.txt', text], ['notes.txt', text]]), 'not-a-pack -');
}

/** All of it made anew by somebody else, one value altered, nothing that does not fit: only a seal given before can tell. */
function rebuilt(seeded: SeededPack, dice: Dice): BrokenPack {
  const altered = seeded.entries.filter(({ kind }) => kind !== 'pack-taken-in').map((entry, seq) => (seq === 1 ? { ...entry, values: { ...entry.values, title: 'A new engine' } } : entry));
  const pack = pipPack({ kept: journal(altered), key: householdKey(1), sample: dice.chance(50) });
  return { zip: zipFiles(pack.name, bytesOf(pack)), expected: { kind: 'by-seal', seal: seeded.seal } };
}

function earlierKeepers(seeded: SeededPack, dice: Dice): BrokenPack {
  const [files, previous] = [filesOf(seeded), must(seeded.previous, 'earlier keeper')];
  const inner = bytesOf(previous);
  const [path, bytes] = plainFile(inner, dice);
  inner.set(path, flipped(bytes, dice.whole(0, bytes.length - 1), dice.whole(0, 7)));
  files.set(previousPath, zipFiles(previous.name, inner));
  signOver(files);
  return exactly(zipped(seeded, files), `changed ${previousPath}`, `changed ${previousPath}!/${path}`);
}

/** Every way to break a pack that the storm tries, by name. */
export const PACK_FAULTS: Readonly<Record<string, Break>> = {
  'a bit of some contents': flipInContents, 'a bit of the ZIP’s own structure': flipInStructure, 'cut off': cut, 'bytes behind the end': tail,
  'a file removed': removed, 'a file added': added, 'a file renamed': renamed, 'two files swapped': swapped, 'a file cut short': shortened, 'a file made longer': lengthened,
  'a file changed, manifests made to fit': changedAndFitted, 'a file moved, manifests made to fit': movedAndFitted, 'packed again by another program': packedAgain,
  'an entry of the ZIP moved or doubled': entriesMoved, 'a row that only one list tells': rowLeftOut, 'rows in another order': rowsReordered, 'a value of a row': rowEdited,
  'the moment of a row': rowDated, 'a date that the history tells': wrongDate, 'the signature of the seal': sealSpoiled, 'the root of the seal': otherRoot, 'a proof': proofEdited, 'no pack at all': noPack,
  'rebuilt whole with a new key': rebuilt, 'the pack of the keeper before': earlierKeepers,
};
