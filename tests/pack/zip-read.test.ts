import { open, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { crc32 } from 'node:zlib';
import { ZipFile } from 'yazl';
import { fileSource } from '../../electron/pack/byte-source.ts';
import { measureBytes } from '../../electron/pack/measure-bytes.ts';
import { CENTRAL_SIGNATURE, centralRecord, endRecord, LOCAL_SIGNATURE, localHeader } from '../../electron/pack/zip-layout.ts';
import { readZip, type ZipPack } from '../../electron/pack/zip-read.ts';
import { textFile } from '../../shared-core/handover/pack-files.ts';
import { DIGESTS } from '../shared-core/handover/pack-fixture.ts';
import { rawZip, type RawEntry } from './raw-zip.ts';
import { zipOf } from './unpack.ts';

const FILES = [textFile('bagit.txt', 'abc', DIGESTS), textFile('data/é.txt', '', DIGESTS), textFile('data/x.bin', 'PK\u0003\u0004 inside', DIGESTS)];

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'trunnion-read-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

interface Reading extends ZipPack {
  readonly contents: Readonly<Record<string, string>>;
  /** Why an entry could not be read. */
  readonly unread: Readonly<Record<string, string>>;
}

async function read(bytes: Uint8Array): Promise<Reading> {
  const path = join(folder, 'a.zip');
  await writeFile(path, bytes);
  const file = await open(path, 'r');
  try {
    const pack = await readZip(fileSource(file, 0, bytes.length));
    const [contents, unread]: [Record<string, string>, Record<string, string>] = [{}, {}];
    for (const source of pack.sources) {
      try {
        contents[source.path] = (await measureBytes(await source.open(), 1_000_000)).bytes?.toString() ?? '';
      } catch (error) {
        unread[source.path] = String(error);
      }
    }
    return { ...pack, contents, unread };
  } finally {
    await file.close();
  }
}

/** Where structure is: everything that is not the bytes of an entry. */
function structure(zip: Buffer): number[] {
  const positions: number[] = [];
  let at = 0;
  while (zip.readUInt32LE(at) === LOCAL_SIGNATURE) {
    const header = 30 + zip.readUInt16LE(at + 26);
    for (let byte = 0; byte < header; byte += 1) positions.push(at + byte);
    at += header + zip.readUInt32LE(at + 18);
  }
  for (; at < zip.length; at += 1) positions.push(at);
  return positions;
}

describe('a ZIP of ours', () => {
  test('is read back whole', async () => {
    const { base, faults, contents, sources } = await read(await zipOf('base', FILES));
    expect({ base, faults }).toEqual({ base: 'base', faults: [] });
    expect(contents).toEqual({ 'bagit.txt': 'abc', 'data/é.txt': '', 'data/x.bin': 'PK\u0003\u0004 inside' });
    expect(sources.map((source) => source.within?.size)).toEqual([3, 11, 0]);
  });

  test('has each changed byte of its structure named as container, in three ways of changing it', async () => {
    const zip = await zipOf('base', FILES);
    const positions = structure(zip);
    expect(positions).toHaveLength(zip.length - 14);
    for (const at of positions) {
      for (const flip of [0x01, 0x80, 0xff]) {
        const { faults } = await read(zip.with(at, (zip[at] ?? 0) ^ flip));
        expect({ at, flip, codes: [...new Set(faults.map((fault) => fault.code))] }).toEqual({ at, flip, codes: ['container'] });
      }
    }
  });

  test('has each changed byte of its contents named by nothing here: the manifests do that', async () => {
    const zip = await zipOf('base', FILES);
    const inside = [...zip.keys()].filter((at) => !structure(zip).includes(at));
    for (const at of inside) expect((await read(zip.with(at, (zip[at] ?? 0) ^ 1))).faults).toEqual([]);
  });

  test('cut off anywhere is truncated', async () => {
    const zip = await zipOf('base', FILES);
    for (let length = 0; length < zip.length; length += 1) {
      const { faults, sources } = await read(zip.subarray(0, length));
      expect({ length, codes: faults.map((fault) => fault.code), read: sources.length }).toEqual({ length, codes: ['truncated'], read: 0 });
    }
  });

  test('cut off after a header that was changed is not only cut off', async () => {
    const zip = await zipOf('base', FILES);
    expect((await read(zip.with(4, 99).subarray(0, 60))).faults).toMatchObject([{ code: 'container', message: { values: { offset: 0 } } }]);
  });

  test('whose end states fewer entries than there are gives none of them out', async () => {
    const zip = await zipOf('base', FILES);
    for (const at of [8, 10]) zip.writeUInt16LE(2, zip.length - 22 + at);
    expect(await read(zip)).toMatchObject({ sources: [], faults: [{ code: 'container', path: null }] });
  });

  test('with bytes before, between or behind is named as container', async () => {
    const zip = await zipOf('base', FILES);
    const second = zip.indexOf('PK\u0003\u0004', 10);
    for (const at of [0, second, zip.length]) {
      const { faults } = await read(Buffer.concat([zip.subarray(0, at), Buffer.from('x'), zip.subarray(at)]));
      expect({ at, codes: faults.map((fault) => fault.code) }).toEqual({ at, codes: ['container'] });
    }
  });

  test('with a comment is named as container', async () => {
    const zip = await zipOf('base', FILES);
    zip.writeUInt16LE(3, zip.length - 2);
    expect((await read(Buffer.concat([zip, Buffer.from('abc')]))).faults.map((fault) => fault.code)).toEqual(['container']);
  });

  test('names the entry whose header was changed, and where', async () => {
    const zip = await zipOf('base', FILES);
    const second = zip.indexOf('PK\u0003\u0004', 10);
    expect((await read(zip.with(second + 10, 1))).faults).toMatchObject([{ code: 'container', path: 'data/x.bin', message: { values: { offset: second + 10 } } }]);
  });
});

describe('a ZIP of another', () => {
  test('program with the same files is named once, and read', async () => {
    const zip = new ZipFile();
    for (const file of FILES) zip.addBuffer(Buffer.from(file.content.kind === 'bytes' ? file.content.bytes : []), `base/${file.path}`, { mtime: new Date(2026, 1, 1) });
    zip.end();
    const pieces: Buffer[] = [];
    for await (const piece of zip.outputStream) pieces.push(piece as Buffer);
    const { faults, contents } = await read(Buffer.concat(pieces));
    expect(faults).toMatchObject([{ code: 'container', path: null, message: { key: 'fault-zip-anew' } }]);
    expect(contents['bagit.txt']).toBe('abc');
  });

  // Source: names of the 2018 disclosure (list from memory); the rest are our own.
  const good: RawEntry = { name: 'base/bagit.txt', text: 'abc' };
  test.each<{ case: string; entry: RawEntry; key: string }>([
    ...['base/../evil', '../evil', 'base\\..\\evil', '/etc/x', 'C:\\x', 'C:x', '\\\\srv\\share', '//srv/x', 'base/a\u0000b', 'base//x', 'base/.', 'base/CON', 'base/a.'].map((name) => ({
      case: `the name ${JSON.stringify(name)}`,
      entry: { name },
      key: 'fault-entry-name',
    })),
    { case: 'a name that is not UTF-8', entry: { name: Buffer.from([0x62, 0x61, 0x73, 0x65, 0x2f, 0xff]) }, key: 'fault-entry-name' },
    { case: 'a link', entry: { name: 'base/link', text: '/etc/passwd', mode: 0o120777 }, key: 'fault-entry-link' },
    { case: 'a folder', entry: { name: 'base/data/' }, key: 'fault-entry-folder' },
    { case: 'a second folder at the top', entry: { name: 'other/x' }, key: 'fault-entry-outside' },
    { case: 'a name twice', entry: { name: 'base/bagit.txt' }, key: 'fault-entry-twice' },
    { case: 'a name twice but for case', entry: { name: 'base/BAGIT.txt' }, key: 'fault-entry-twice' },
    { case: 'encryption', entry: { name: 'base/secret', flags: 0x801 }, key: 'fault-zip-unreadable' },
    { case: 'encryption of compressed bytes', entry: { name: 'base/secret', text: 'x', method: 8, flags: 0x801 }, key: 'fault-entry-encrypted' },
    { case: 'another compression', entry: { name: 'base/x', method: 12 }, key: 'fault-entry-compression' },
  ])('hand with $case', async ({ entry, key }) => {
    const { faults, contents } = await read(rawZip([good, { name: 'base/data/y', text: 'y' }, entry]));
    expect(faults.map((fault) => fault.code)).toContain('container');
    expect(faults.map((fault) => fault.message.key)).toContain(key);
    expect(Object.keys(contents).filter((path) => !['bagit.txt', 'data/y'].includes(path))).toEqual([]);
  });

  test('hand in another order, all else as it should be', async () => {
    const { faults } = await read(rawZip([{ name: 'base/data/y', text: 'y' }, good]));
    expect(faults).toMatchObject([{ code: 'container', path: 'bagit.txt', message: { key: 'fault-zip-order', values: { before: 'data/y' } } }]);
  });

  test('hand whose entries lie over one another is not read at all', async () => {
    const [text, count] = ['a'.repeat(5000), 3];
    const facts = { name: Buffer.from('base/x'), size: text.length, crc32: crc32(Buffer.from(text)) };
    const directory = Buffer.concat(Array.from({ length: count }, () => centralRecord(facts, 0)));
    const body = Buffer.concat([localHeader(facts), Buffer.from(text)]);
    const pack = await read(Buffer.concat([body, directory, endRecord(count, directory.length, body.length)]));
    expect(pack).toMatchObject({ sources: [], faults: [{ code: 'container', message: { key: 'fault-zip-unreadable' } }] });
  });

  test('hand whose local name differs from the directory', async () => {
    const { faults } = await read(rawZip([good, { name: 'base/data/y', localName: 'base/data/z' }]));
    expect(faults.map(({ code, path }) => `${code} ${path}`)).toEqual(['container data/y', 'container data/z']);
  });

  test.each([
    { case: 'states few bytes and holds many', entry: { name: 'base/bomb', text: 'a'.repeat(1_000_000), method: 8, size: 1000 } },
    { case: 'states more bytes than it holds', entry: { name: 'base/bomb', text: 'a', method: 8, size: 1000 } },
  ])('hand that $case is not read to the end', async ({ entry }) => {
    const { contents, unread } = await read(rawZip([good, entry]));
    expect(contents).toEqual({ 'bagit.txt': 'abc' });
    expect(unread['bomb']).toMatch(/bytes in the stream/);
  });

  test('hand that states more bytes than any pack is not read at all', async () => {
    const huge = [1, 2].map((part) => ({ name: `base/bomb${part}`, text: 'a', method: 8, size: 4_000_000_000 }));
    expect(await read(rawZip([good, ...huge]))).toMatchObject({ sources: [], faults: [{ code: 'container', message: { key: 'fault-zip-unreadable' } }] });
  });

  test.each([
    { case: 'text', bytes: Buffer.from('hello, this is no ZIP at all, only text that is long enough') },
    { case: 'a few bytes', bytes: Buffer.from('ab') },
    { case: 'zero bytes', bytes: Buffer.alloc(100) },
  ])('kind is not a pack: $case', async ({ bytes }) => {
    expect((await read(bytes)).faults.map((fault) => fault.code)).toEqual(['not-a-pack']);
  });

  test('random files never fail in a way of their own', async () => {
    let state = 12345;
    const next = () => (state = (state * 1103515245 + 12345) & 0x7fffffff);
    const zip = await zipOf('base', FILES);
    for (let run = 0; run < 400; run += 1) {
      const bytes = Buffer.from(zip);
      for (let flips = 1 + (next() % 8); flips > 0; flips -= 1) bytes[next() % bytes.length] = next() & 255;
      const { faults } = await read(bytes);
      expect(faults.filter((fault) => !['container', 'truncated', 'not-a-pack'].includes(fault.code))).toEqual([]);
    }
  });
});

test('signatures are those of the source', () => {
  // Source: PKWARE APPNOTE 4.3 (constants seen).
  expect([LOCAL_SIGNATURE, CENTRAL_SIGNATURE]).toEqual([0x04034b50, 0x02014b50]);
});
