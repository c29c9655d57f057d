import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ZipFile } from 'yazl';
import { bytesFile, textFile, type PackFile } from '../../shared-core/handover/pack-files.ts';
import { diskFile } from '../../electron/pack/measure-bytes.ts';
import { FileChangedError } from '../../electron/pack/zip-write.ts';
import { DIGESTS } from '../shared-core/handover/pack-fixture.ts';
import { isPresent } from './tool-present.ts';
import { zipOf } from './unpack.ts';

const FILES: readonly PackFile[] = [
  textFile('b/é.txt', '', DIGESTS),
  textFile('a.txt', 'abc', DIGESTS),
  bytesFile('data/\u{1f600}', new Uint8Array([0, 1, 2, 255]), DIGESTS),
  bytesFile('data/\ufb33', new Uint8Array(70_000).fill(7), DIGESTS),
];
const IN_ORDER = ['base/a.txt', 'base/b/é.txt', 'base/data/\ufb33', 'base/data/\u{1f600}'];

/** The same files by an independent writer, its dates read in the zone of this process. */
async function byOtherWriter(): Promise<Buffer> {
  const zip = new ZipFile();
  const sorted = IN_ORDER.map((name) => FILES.find((file) => `base/${file.path}` === name));
  for (const file of sorted) {
    if (file?.content.kind !== 'bytes') throw new Error('bytes');
    zip.addBuffer(Buffer.from(file.content.bytes), `base/${file.path}`, { compress: false, mode: 0o100644, mtime: new Date(1980, 0, 1), forceDosTimestamp: true });
  }
  zip.end();
  const pieces: Buffer[] = [];
  for await (const piece of zip.outputStream) pieces.push(piece as Buffer);
  return Buffer.concat(pieces);
}

describe('a ZIP', () => {
  let folder = '';
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'trunnion-zip-'));
  });
  afterAll(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  test('is what an independent writer makes of the same files', async () => {
    expect(await zipOf('base', FILES)).toEqual(await byOtherWriter());
  });

  test('is the same whatever the order of the files and the time zone', async () => {
    const once = await zipOf('base', FILES);
    const zone = process.env['TZ'];
    process.env['TZ'] = 'Pacific/Kiritimati';
    try {
      expect(await zipOf('base', [...FILES].reverse())).toEqual(once);
    } finally {
      if (zone === undefined) delete process.env['TZ'];
      else process.env['TZ'] = zone;
    }
  });

  test('without entries is 22 bytes', async () => {
    // Source: PKWARE APPNOTE 4.3.16 (recomputed).
    expect((await zipOf('base', [])).toString('hex')).toBe(`504b0506${'00'.repeat(18)}`);
  });

  test('takes a file from disk as it takes bytes', async () => {
    writeFileSync(join(folder, 'source'), new Uint8Array(70_000).fill(7));
    const fromDisk = await diskFile('data/\ufb33', join(folder, 'source'));
    const files = FILES.map((file) => (file.path === fromDisk.path ? fromDisk : file));
    expect(fromDisk).toMatchObject({ sha256: FILES[3]?.sha256, sha512: FILES[3]?.sha512, size: 70_000 });
    expect(await zipOf('base', files)).toEqual(await zipOf('base', FILES));
  });

  test.each([
    { case: 'longer', text: 'abcd' },
    { case: 'shorter', text: 'ab' },
    { case: 'another', text: 'abd' },
  ])('is not finished where a file on disk has become $case', async ({ text }) => {
    writeFileSync(join(folder, 'moving'), 'abc');
    const file = await diskFile('a.txt', join(folder, 'moving'));
    writeFileSync(join(folder, 'moving'), text);
    await expect(zipOf('base', [file])).rejects.toBeInstanceOf(FileChangedError);
  });

  test.skipIf(!isPresent('python3', '--version'))('is read by a second reader: Python', async () => {
    const path = join(folder, 'python.zip');
    writeFileSync(path, await zipOf('base', FILES));
    const script = [
      'import zipfile, sys, json',
      'z = zipfile.ZipFile(sys.argv[1])',
      'print(json.dumps([z.testzip(), [[i.filename, list(i.date_time), i.file_size, i.compress_type, i.flag_bits, oct(i.external_attr >> 16), len(i.extra), i.CRC] for i in z.infolist()]]))',
    ].join('\n');
    const run = spawnSync('python3', ['-c', script, path], { encoding: 'utf8' });
    const [bad, entries] = JSON.parse(run.stdout) as [unknown, unknown[][]];
    expect(bad).toBeNull();
    expect(entries.map(([name]) => name)).toEqual(IN_ORDER);
    expect(entries[0]).toEqual(['base/a.txt', [1980, 1, 1, 0, 0, 0], 3, 0, 0x800, '0o100644', 0, 0x352441c2]);
  });

  test.skipIf(!isPresent('unzip', '-v'))('is read by a second reader: unzip', async () => {
    const path = join(folder, 'unzip.zip');
    writeFileSync(path, await zipOf('base', FILES));
    const run = spawnSync('unzip', ['-t', path], { encoding: 'utf8' });
    expect(run.stdout).toContain('No errors detected');
    expect(spawnSync('unzip', ['-q', path, '-d', folder]).status).toBe(0);
    expect(readFileSync(join(folder, 'base', 'a.txt'), 'utf8')).toBe('abc');
  });

  test('holds no name twice', async () => {
    await expect(zipOf('base', [textFile('a', '1', DIGESTS), textFile('a', '2', DIGESTS)])).rejects.toThrow(/Bug/);
  });
});
