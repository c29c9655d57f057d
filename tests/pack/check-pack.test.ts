import { spawnSync } from 'node:child_process';
import { appendFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, symlinkSync, unlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { checkPackAt } from '../../electron/pack/check-pack.ts';
import { diskFile } from '../../electron/pack/measure-bytes.ts';
import { writePack } from '../../electron/pack/write-pack.ts';
import type { CheckReport } from '../../shared-core/handover/check-report.ts';
import { sealText } from '../../shared-core/journal/seal-text.ts';
import { bytesOf, DIGESTS, householdKey, journal, pipPack, pipPackWith, sealOf } from '../shared-core/handover/pack-fixture.ts';
import { bytesFile, textFile } from '../../shared-core/handover/pack-files.ts';
import { isPresent } from './tool-present.ts';
import { unpackInto, zipOf } from './unpack.ts';

const PACK = pipPack();
const PATHS = PACK.files.map((file) => file.path);
const HAS_SHA512SUM = isPresent('sha512sum', '--version');
const HAS_OPENSSL = isPresent('openssl', 'version');

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'trunnion-check-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

async function checked(path: string, seal: string | null = null): Promise<CheckReport> {
  const report = await checkPackAt(path, seal);
  if (!report.ok) throw new Error(report.refusal.code);
  return report.value;
}

const named = (report: CheckReport) => report.faults.map(({ code, path }) => `${code} ${path ?? '-'}`);

function flip(path: string, at: number): void {
  const bytes = readFileSync(path);
  writeFileSync(path, bytes.with(at, (bytes[at] ?? 0) ^ 1));
}

/** The files that sha512sum names as failed or absent, over both manifests. */
function namedBySha512sum(): string[] {
  return ['manifest-sha512.txt', 'tagmanifest-sha512.txt'].flatMap((manifest) => {
    const run = spawnSync('sha512sum', ['-c', '--strict', manifest], { cwd: folder, encoding: 'utf8', env: { ...process.env, LC_ALL: 'C' } });
    return run.stdout.split('\n').flatMap((line) => (/^(.*): FAILED/.exec(line)?.[1] ?? []));
  });
}

describe('an unpacked pack', () => {
  beforeEach(() => {
    unpackInto(folder, PACK);
  });

  test('untouched has no fault', async () => {
    expect(await checked(folder)).toMatchObject({ name: 'pip-2026-11-25', faults: [], warnings: [], rows: 4 });
  });

  test('is found one folder deeper too', async () => {
    const outer = mkdtempSync(join(tmpdir(), 'trunnion-outer-'));
    try {
      unpackInto(join(outer, 'pip-2026-11-25'), PACK);
      expect(named(await checked(outer))).toEqual([]);
    } finally {
      rmSync(outer, { recursive: true, force: true });
    }
  });

  test.skipIf(!HAS_SHA512SUM)('untouched satisfies sha512sum', () => {
    expect(namedBySha512sum()).toEqual([]);
    expect(spawnSync('sha512sum', ['-c', '--strict', '--quiet', 'manifest-sha512.txt', 'tagmanifest-sha512.txt'], { cwd: folder }).status).toBe(0);
  });

  const withBytes = PATHS.filter((path) => path !== 'data/empty.csv');
  test.skipIf(!HAS_SHA512SUM).each(withBytes)('a changed byte of %s is named here and by sha512sum', async (path) => {
    const text = readFileSync(join(folder, path));
    const { length } = text;
    // Nothing lists the tag manifest, so sha512sum sees a slip in it only where a digest no longer fits its file: where its digit stays one.
    const digits = [...text.subarray(0, 128).keys()].filter((at) => /[0-9b-e]/.test(String.fromCharCode(text[at] ?? 0)));
    const places = path === 'tagmanifest-sha512.txt' ? [digits[0] ?? 0, digits[Math.floor(digits.length / 2)] ?? 0, digits.at(-1) ?? 0] : [0, Math.floor(length / 2), length - 1];
    for (const at of places) {
      flip(join(folder, path), at);
      expect(new Set((await checked(folder)).faults.map((fault) => fault.path))).toEqual(new Set([path]));
      const expected = path === 'tagmanifest-sha512.txt' ? 'bag-info.txt' : path;
      expect(namedBySha512sum()).toContain(expected);
      flip(join(folder, path), at);
    }
    expect(named(await checked(folder))).toEqual([]);
  });

  test.skipIf(!HAS_OPENSSL)('has a list that openssl finds signed, and not when it is changed', () => {
    const verify = () => spawnSync('openssl', ['pkeyutl', '-verify', '-pubin', '-inkey', 'data/journal/household-key.pem', '-rawin', '-in', 'signed-contents.json', '-sigfile', 'signed-contents.sig'], { cwd: folder, encoding: 'utf8' });
    expect(verify().stdout).toContain('Signature Verified Successfully');
    flip(join(folder, 'signed-contents.json'), 40);
    expect(verify().status).not.toBe(0);
  });

  test('with a link in it never follows it', async () => {
    unlinkSync(join(folder, 'data/history.pdf'));
    symlinkSync('/etc/hostname', join(folder, 'data/history.pdf'));
    symlinkSync('/', join(folder, 'data/root'));
    const report = await checked(folder);
    expect(named(report).sort()).toEqual(['container data/history.pdf', 'container data/root']);
    expect(report.faults.map((fault) => fault.message.key)).toEqual(['fault-entry-link', 'fault-entry-link']);
  });

  test.skipIf(process.platform === 'win32')('with a pipe in it never waits for it', async () => {
    if (spawnSync('mkfifo', [join(folder, 'data/pipe')]).status !== 0) return;
    expect(named(await checked(folder))).toEqual(['container data/pipe']);
  });

  test('with an empty folder added has no fault: a bag holds files only', async () => {
    mkdirSync(join(folder, 'data/empty'));
    expect(named(await checked(folder))).toEqual([]);
  });

  test('with a file that a system left behind', async () => {
    writeFileSync(join(folder, 'data/.DS_Store'), 'x');
    expect(named(await checked(folder))).toEqual(['added data/.DS_Store']);
  });
});

describe('a pack as ZIP', () => {
  test('is written whole, and the same again is no second file', async () => {
    const path = join(folder, 'pip-2026-11-25.zip');
    expect(await writePack(PACK, folder)).toEqual({ ok: true, value: path });
    const bytes = readFileSync(path);
    expect(bytes).toEqual(await zipOf(PACK.name, PACK.files));
    expect(await writePack(PACK, folder)).toEqual({ ok: true, value: path });
    expect(readdirSync(folder)).toEqual(['pip-2026-11-25.zip']);
    expect(named(await checked(path))).toEqual([]);
  });

  test('never takes the place of another', async () => {
    await writePack(PACK, folder);
    const other = pipPack({ sample: true });
    expect(await writePack(other, folder)).toMatchObject({ ok: false, refusal: { code: 'pack-exists' } });
    expect(readFileSync(join(folder, 'pip-2026-11-25.zip'))).toEqual(await zipOf(PACK.name, PACK.files));
    expect(readdirSync(folder)).toHaveLength(1);
  });

  test('is not left half-written', async () => {
    writeFileSync(join(folder, 'source'), 'abc');
    const pack = pipPack({ files: [await diskFile('data/papers/x.pdf', join(folder, 'source'))] });
    appendFileSync(join(folder, 'source'), 'd');
    expect(await writePack(pack, folder)).toMatchObject({ ok: false, refusal: { code: 'paper-changed' } });
    rmSync(join(folder, 'source'));
    expect(await writePack(pack, folder)).toMatchObject({ ok: false, refusal: { code: 'pack-not-written', values: { why: 'ENOENT' } } });
    expect(readdirSync(folder)).toEqual([]);
    expect(await writePack(pack, join(folder, 'nowhere'))).toMatchObject({ ok: false, refusal: { code: 'pack-not-written' } });
    expect(existsSync(join(folder, 'nowhere'))).toBe(false);
  });

  test('one changed byte anywhere is named: structure as container, contents by their path', async () => {
    const zip = await zipOf(PACK.name, PACK.files);
    const path = join(folder, 'flipped.zip');
    const bodies = bodiesOf(zip);
    let state = 7;
    for (let run = 0; run < 250; run += 1) {
      state = (state * 1103515245 + 12345) & 0x7fffffff;
      const at = state % zip.length;
      writeFileSync(path, zip.with(at, (zip[at] ?? 0) ^ 4));
      const report = await checked(path);
      const body = bodies.find(({ start, end }) => at >= start && at < end);
      expect({ at, code: report.faults[0]?.code }).toEqual({ at, code: body === undefined ? 'container' : 'changed' });
      if (body === undefined) expect(report.faults.filter((fault) => fault.code !== 'container')).toEqual([]);
      else expect(new Set(report.faults.map((fault) => fault.path))).toEqual(new Set([body.path]));
    }
  });

  test('cut off is named as truncated and nothing else', async () => {
    const zip = await zipOf(PACK.name, PACK.files);
    for (const length of [1, 40, 1000, zip.length - 23, zip.length - 1]) {
      writeFileSync(join(folder, 'cut.zip'), zip.subarray(0, length));
      expect((await checked(join(folder, 'cut.zip'))).faults.map((fault) => fault.code)).toEqual(['truncated']);
    }
  });

  test('in another folder within the ZIP is named', async () => {
    writeFileSync(join(folder, 'a.zip'), await zipOf('other', PACK.files));
    expect(named(await checked(join(folder, 'a.zip')))).toEqual(['container -']);
  });

  test('whose stated CRC-32 is wrong twice over is named, though every digest fits', async () => {
    const zip = await zipOf(PACK.name, PACK.files);
    const body = bodiesOf(zip).find(({ path }) => path === 'data/history.pdf');
    const record = zip.indexOf(`${PACK.name}/data/history.pdf`, (body?.end ?? 0) + 1) - 46;
    const wrong = Buffer.from(zip);
    for (const at of [(body?.header ?? 0) + 14, record + 16]) wrong.writeUInt32LE(12345, at);
    writeFileSync(join(folder, 'crc.zip'), wrong);
    expect((await checked(join(folder, 'crc.zip'))).faults).toMatchObject([{ code: 'container', path: 'data/history.pdf', message: { key: 'fault-zip-crc' } }]);
  });

  test('is checked against a seal given before, however it was typed', async () => {
    await writePack(PACK, folder);
    const path = join(folder, 'pip-2026-11-25.zip');
    const text = sealText(sealOf(journal())).toLowerCase().replaceAll('\n', ' ');
    expect((await checked(path, text)).notes.map((note) => note.key)).toEqual(['note-given-agrees']);
    expect(named(await checked(path, sealText(sealOf(journal(), householdKey(1)))))).toEqual(['bad-signature data/journal/seal.json']);
    expect(await checkPackAt(path, `${text.slice(0, -1)}z`)).toMatchObject({ ok: false, refusal: { code: 'seal-mistyped' } });
  });
});

describe('a pack with an earlier keeper’s pack in it', () => {
  async function carriedOn(inner: Uint8Array): Promise<string> {
    const pack = pipPackWith(bytesFile('data/previous/1-pip.zip', inner, DIGESTS));
    const path = join(folder, 'outer.zip');
    writeFileSync(path, await zipOf(pack.name, pack.files));
    return path;
  }

  test('has both checked', async () => {
    expect(named(await checked(await carriedOn(await zipOf(PACK.name, PACK.files))))).toEqual([]);
  });

  test('names what is wrong in the earlier one by the way to it', async () => {
    const inner = await zipOf(PACK.name, PACK.files);
    const body = bodiesOf(inner).find(({ path }) => path === 'data/history.pdf');
    const path = await carriedOn(inner.with(body?.start ?? 0, 0));
    expect(named(await checked(path))).toEqual(['changed data/previous/1-pip.zip!/data/history.pdf']);
    expect(named(await checked(await carriedOn(inner.subarray(0, 500))))[0]).toMatch(/^truncated data\/previous\/1-pip\.zip!\//);
    expect(named(await checked(await carriedOn(Buffer.from('no zip'))))).toEqual(['not-a-pack data/previous/1-pip.zip']);
  });

  test('has it checked in an unpacked pack too', async () => {
    const inner = await zipOf(PACK.name, PACK.files);
    const pack = pipPackWith(bytesFile('data/previous/1-pip.zip', inner.with(70, 0), DIGESTS));
    unpackInto(folder, pack);
    expect(named(await checked(folder))).toHaveLength(1);
    expect(named(await checked(folder))[0]).toMatch(/ data\/previous\/1-pip\.zip!\//);
  });
});

describe('what cannot be checked', () => {
  test('is refused where there is nothing', async () => {
    expect(await checkPackAt(join(folder, 'none.zip'))).toMatchObject({ ok: false, refusal: { code: 'pack-not-found' } });
  });

  test.each([
    { case: 'an empty folder', make: () => undefined },
    { case: 'a folder of other files', make: () => writeFileSync(join(folder, 'x'), 'x') },
  ])('is not a pack: $case', async ({ make }) => {
    make();
    expect(named(await checked(folder))).toEqual(['not-a-pack -']);
  });

  test.each([
    { case: 'text', bytes: Buffer.from('a letter') },
    { case: 'a ZIP of other files', bytes: null },
  ])('is not a pack: $case', async ({ bytes }) => {
    const path = join(folder, 'a.zip');
    writeFileSync(path, bytes ?? (await zipOf('base', [textFile('readme.txt', 'hello', DIGESTS)])));
    expect(named(await checked(path))).toEqual(['not-a-pack -']);
  });
});

interface Body {
  readonly path: string;
  readonly header: number;
  readonly start: number;
  readonly end: number;
}

/** Where the bytes of each file stand in a ZIP of this pack. */
function bodiesOf(zip: Buffer): Body[] {
  const contents = bytesOf(PACK);
  const bodies: Body[] = [];
  let at = 0;
  while (zip.readUInt32LE(at) === 0x04034b50) {
    const start = at + 30 + zip.readUInt16LE(at + 26);
    const path = zip.subarray(at + 30, start).toString().slice(PACK.name.length + 1);
    bodies.push({ path, header: at, start, end: start + (contents.get(path)?.length ?? 0) });
    at = bodies.at(-1)?.end ?? zip.length;
  }
  return bodies;
}
