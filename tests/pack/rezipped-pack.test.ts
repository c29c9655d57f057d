import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ZipFile } from 'yazl';
import { checkPackAt } from '../../electron/pack/check-pack.ts';
import { packCheckView, type PackCheckView } from '../../shared-core/views/pack-check-view.ts';
import { bytesOf, pipPack } from '../shared-core/handover/pack-fixture.ts';
import { openTestHost, temporaryFolder } from '../host/open-test-host.ts';
import { unpackInto } from './unpack.ts';

const PACK = pipPack();
const ANEW = 'The ZIP was written anew by another program. Its files are checked all the same.';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'trunnion-rezipped-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

async function checked(path: string): Promise<PackCheckView> {
  const report = await checkPackAt(path);
  if (!report.ok) throw new Error(report.refusal.code);
  return packCheckView(report.value);
}

/** The pack as another program zips its folder: compressed, an entry for each folder, in that program's own order. */
async function rezipped({ below = `${PACK.name}/`, folders = true, more = {} }: { readonly below?: string; readonly folders?: boolean; readonly more?: Readonly<Record<string, string>> } = {}): Promise<string> {
  const zip = new ZipFile();
  const names = [...[...bytesOf(PACK)].map(([path, bytes]) => [below + path, bytes] as const), ...Object.entries(more).map(([path, text]) => [path, Buffer.from(text)] as const)];
  const above = new Set(names.flatMap(([name]) => name.split('/').slice(0, -1).map((_part, at, parts) => `${parts.slice(0, at + 1).join('/')}/`)));
  if (folders) for (const name of above) zip.addEmptyDirectory(name);
  for (const [name, bytes] of names) zip.addBuffer(Buffer.from(bytes), name);
  zip.end();
  const pieces: Buffer[] = [];
  for await (const piece of zip.outputStream) pieces.push(piece as Buffer);
  const path = join(folder, 'again.zip');
  writeFileSync(path, Buffer.concat(pieces));
  return path;
}

const named = ({ faults }: PackCheckView) => faults.map(({ code, path }) => `${code} ${path ?? '-'}`);

test('a pack zipped again as a folder is told so once, and no entry without a name', async () => {
  const { faults } = await checked(await rezipped());
  expect(faults.map((fault) => fault.text)).toEqual([ANEW]);
});

test('an entry for the folder itself, put into the ZIP beside what the program wrote, is named by its name', async () => {
  const zip = new ZipFile();
  zip.addEmptyDirectory('only');
  zip.addBuffer(Buffer.from('x'), 'only/bagit.txt', { compress: false });
  zip.end();
  const pieces: Buffer[] = [];
  for await (const piece of zip.outputStream) pieces.push(piece as Buffer);
  writeFileSync(join(folder, 'a.zip'), Buffer.concat(pieces));
  for (const { path, text } of (await checked(join(folder, 'a.zip'))).faults) {
    expect(path).not.toBe('');
    expect(text).not.toMatch(/^ /);
  }
});

test('files zipped without the folder they were in are told as just that, and all checked', async () => {
  for (const folders of [true, false]) {
    const { faults, rows } = await checked(await rezipped({ below: '', folders }));
    expect(faults.map((fault) => fault.text)).toEqual([ANEW, 'The files of the pack stand in the ZIP without the folder pip-2026-11-25 that they were in: another program zipped them. They are checked all the same.']);
    expect(rows).toBe(4);
  }
});

test('what operating systems put into a ZIP is told as added, with what it is', async () => {
  const report = await checked(await rezipped({ more: { [`__MACOSX/${PACK.name}/._bagit.txt`]: 'x', [`__MACOSX/._${PACK.name}`]: 'x', [`${PACK.name}/data/.DS_Store`]: 'x', [`${PACK.name}/Thumbs.db`]: 'x' } }));
  expect(new Set(named(report))).toEqual(new Set([`added __MACOSX/._${PACK.name}`, `added __MACOSX/${PACK.name}/._bagit.txt`, 'added Thumbs.db', 'added data/.DS_Store', 'container -']));
  for (const { text } of report.faults.filter((fault) => fault.code === 'added')) expect(text).toContain('Operating systems write such files by themselves');
});

test('a stranger’s file is told as added, and not as a system’s', async () => {
  const { faults } = await checked(await rezipped({ more: { [`${PACK.name}/data/extra.txt`]: 'x' } }));
  expect(faults.map((fault) => fault.text)).toEqual([ANEW, 'data/extra.txt was added after the pack was made.']);
});

test('an unpacked pack is found beside what a system put there', async () => {
  unpackInto(join(folder, PACK.name), PACK);
  mkdirSync(join(folder, '__MACOSX'));
  writeFileSync(join(folder, '.DS_Store'), 'x');
  expect(named(await checked(folder))).toEqual([]);
  writeFileSync(join(folder, PACK.name, 'data/.DS_Store'), 'x');
  const report = await checked(folder);
  expect(named(report)).toEqual(['added data/.DS_Store']);
  expect(report.faults[0]?.text).toContain('Operating systems write such files');
});

test('a pack that is to be written where a file stands says so of that place', async () => {
  const host = openTestHost();
  await host.must('household.start', { name: 'Test household' });
  await host.must('car.add', { id: 'pip', name: 'Pip' });
  const out = join(temporaryFolder(), 'a file');
  writeFileSync(out, 'x');
  expect(await host.call('pack.write', { car: 'pip', out })).toMatchObject({ ok: false, refusal: { code: 'pack-out-not-a-folder', values: { path: out } } });
});
