import { crc32 } from 'node:zlib';
import { ZipFile } from 'yazl';
import { ROWS, SIGNATURE, SIGNED_CONTENTS } from '../../shared-core/handover/pack-files.ts';
import { canonicalJson } from '../../shared-core/journal/canonical-json.ts';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { must } from '../../shared-core/result/assert.ts';
import { centralRecord, endRecord, localHeader } from '../../electron/pack/zip-layout.ts';
import { DIGESTS, householdKey } from '../shared-core/handover/pack-fixture.ts';

/** The files of a pack by path, to be altered. */
export type Files = Map<string, Buffer>;

/** An entry of a ZIP: its path below the base, and its bytes. */
export type ZipEntry = readonly [path: string, bytes: Buffer];

/** The entries as the program itself would store them, but in the order given. */
export function zipInOrder(base: string, entries: readonly ZipEntry[]): Buffer {
  let at = 0;
  const written = entries.map(([path, bytes]) => {
    const facts = { name: Buffer.from(`${base}/${path}`), size: bytes.length, crc32: crc32(bytes) };
    const header = localHeader(facts);
    const record = centralRecord(facts, at);
    at += header.length + bytes.length;
    return { body: Buffer.concat([header, bytes]), record };
  });
  const records = Buffer.concat(written.map((one) => one.record));
  return Buffer.concat([...written.map((one) => one.body), records, endRecord(entries.length, records.length, at)]);
}

/** The files sorted as a pack's are. */
export function zipFiles(base: string, files: Files): Buffer {
  return zipInOrder(base, sortedEntries(files));
}

/** The files in the order of the bytes of their paths. */
export function sortedEntries(files: Files): ZipEntry[] {
  return [...files].sort(([a], [b]) => Buffer.compare(Buffer.from(a), Buffer.from(b)));
}

/** The files packed again by another program, compressed and with today's dates. */
export async function zipByAnother(base: string, files: Files): Promise<Buffer> {
  const zip = new ZipFile();
  for (const [path, bytes] of sortedEntries(files)) zip.addBuffer(bytes, `${base}/${path}`, { compress: true });
  zip.end();
  const pieces: Buffer[] = [];
  for await (const piece of zip.outputStream) pieces.push(piece as Buffer);
  return Buffer.concat(pieces);
}

const digestOf = (bytes: Buffer | undefined) => hexText(DIGESTS.sha512(bytes ?? Buffer.alloc(0)));

function manifest(files: Files, paths: readonly string[]): Buffer {
  return Buffer.from([...paths].sort((a, b) => Buffer.compare(Buffer.from(a), Buffer.from(b))).map((path) => `${digestOf(files.get(path))}  ${path}\n`).join(''));
}

/** Makes count and both manifests fit the files as they are now: what anyone without the key can do. */
export function refit(files: Files): void {
  const payload = [...files.keys()].filter((path) => path.startsWith('data/'));
  const bytes = payload.reduce((sum, path) => sum + must(files.get(path), path).length, 0);
  files.set('bag-info.txt', Buffer.from(String(files.get('bag-info.txt')).replace(/Oxum: \d+\.\d+/, `Oxum: ${bytes}.${payload.length}`)));
  files.set('manifest-sha512.txt', manifest(files, payload));
  files.set('tagmanifest-sha512.txt', manifest(files, ['bagit.txt', 'bag-info.txt', 'manifest-sha512.txt', SIGNED_CONTENTS, SIGNATURE]));
}

/** Makes everything fit and signs it: what only the household's own key can do. */
export function signOver(files: Files, key = householdKey(), head: object = {}): void {
  refit(files);
  const contents = JSON.parse(String(files.get(SIGNED_CONTENTS))) as { files: Record<string, string> };
  const listed = [...files.keys()].filter((path) => ![SIGNED_CONTENTS, SIGNATURE, 'tagmanifest-sha512.txt'].includes(path));
  files.set(SIGNED_CONTENTS, Buffer.from(canonicalJson({ ...contents, ...head, files: Object.fromEntries(listed.map((path) => [path, digestOf(files.get(path))])) })));
  files.set(SIGNATURE, Buffer.from(key.sign(must(files.get(SIGNED_CONTENTS), 'list'))));
  refit(files);
}

/** Edits a JSON file of a pack in place, kept canonical. */
export function editJson<Value>(files: Files, path: string, edit: (value: Value) => void): void {
  const value = JSON.parse(String(files.get(path))) as Value;
  edit(value);
  files.set(path, Buffer.from(canonicalJson(value)));
}

/** A row of a pack as an edit meets it. */
export interface EditableEntry {
  readonly row: { seq: number; at: string };
  readonly proof: string[];
  readonly shown: Record<string, { salt: string; value: unknown }>;
}

/** Edits the rows of a pack. */
export function editRows(files: Files, edit: (entries: EditableEntry[]) => void): void {
  editJson<{ entries: EditableEntry[] }>(files, ROWS, ({ entries }) => edit(entries));
}
