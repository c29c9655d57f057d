import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { readPaper } from '../../electron/papers/read-paper.ts';
import { paperPath, writePaper } from '../../electron/papers/write-paper.ts';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { sha256 } from '../../electron/host/node-digests.ts';
import { temporaryFolder } from '../host/open-test-host.ts';
import { disk } from './failing-disk.ts';

vi.mock('node:fs', async (original) => (await import('./failing-disk.ts')).failingFs(await original()));

const BYTES = Buffer.alloc(300_000, 'paper ');
const ID = hexText(sha256(BYTES));

beforeEach(() => {
  disk.fault = null;
  disk.calls = [];
});

/** How many calls a whole write makes: the loop below is as long as that. */
function callsOfWrite(): number {
  disk.calls = [];
  writePaper(temporaryFolder(), BYTES);
  return disk.calls.length;
}

function unfinished(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.part'));
}

describe('writing a paper', () => {
  test('puts its bytes under their digest, on disk before its name, for its owner only', () => {
    const folder = temporaryFolder();
    expect(writePaper(folder, BYTES)).toBe(ID);
    expect(readFileSync(paperPath(folder, ID)).equals(BYTES)).toBe(true);
    expect(statSync(paperPath(folder, ID)).mode & 0o777).toBe(0o600);
    const order = disk.calls.filter((name) => ['fsyncSync', 'renameSync'].includes(name));
    // Its bytes, then its name, then the folder that holds the name, then the one above.
    expect(order).toEqual(['fsyncSync', 'renameSync', 'fsyncSync', 'fsyncSync']);
  });

  test('the same bytes twice are one file, written once', () => {
    const folder = temporaryFolder();
    writePaper(folder, BYTES);
    const before = statSync(paperPath(folder, ID)).mtimeMs;
    disk.calls = [];
    expect(writePaper(folder, BYTES)).toBe(ID);
    expect(disk.calls).toEqual([]);
    expect(statSync(paperPath(folder, ID)).mtimeMs).toBe(before);
  });

  test('puts right a file of that name that holds other bytes', () => {
    const folder = temporaryFolder();
    mkdirSync(dirname(paperPath(folder, ID)), { recursive: true });
    writeFileSync(paperPath(folder, ID), 'other bytes');
    writePaper(folder, BYTES);
    expect(readPaper(folder, ID)).toMatchObject({ state: 'whole' });
  });

  // Source: how SQLite tests itself for full disks: fail at call n, n = 1, 2, 3, until one goes through, then look (testing.html s3: seen).
  test.each(['once', 'crash'] as const)('is whole or not at all, wherever the disk fails (%s)', (how) => {
    const calls = callsOfWrite();
    expect(calls).toBeGreaterThan(8);
    for (let at = 1; at <= calls; at += 1) {
      const folder = temporaryFolder();
      disk.calls = [];
      disk.fault = { at, how };
      expect(() => writePaper(folder, BYTES), `fault at call ${at}`).toThrow('ENOSPC');
      disk.fault = null;
      expect(['whole', 'missing'], `fault at call ${at}`).toContain(readPaper(folder, ID).state);
      if (how === 'once') expect(unfinished(folder), `fault at call ${at}`).toEqual([]);
      expect(writePaper(folder, BYTES)).toBe(ID);
      expect(readPaper(folder, ID)).toMatchObject({ state: 'whole' });
    }
  });

  test('a file that is there is never harmed by a write that fails', () => {
    const folder = temporaryFolder();
    const path = paperPath(folder, ID);
    for (let at = 1; at <= callsOfWrite(); at += 1) {
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, 'other bytes');
      disk.calls = [];
      disk.fault = { at, how: 'crash' };
      expect(() => writePaper(folder, BYTES)).toThrow('ENOSPC');
      disk.fault = null;
      expect(['other bytes', BYTES.toString()]).toContain(readFileSync(path, 'utf8'));
    }
  });
});

describe('reading a paper', () => {
  test.each([
    { case: 'one that was never kept', id: 'a'.repeat(64) },
    { case: 'a name that is no digest', id: 'receipt' },
    { case: 'a way out of the folder', id: '../../../etc/passwd' },
    { case: 'a way out of the folder as long as a digest', id: `../${'a'.repeat(61)}` },
    { case: 'a digest in capitals', id: ID.toUpperCase() },
    { case: 'a digest with a NUL', id: `${ID.slice(0, 63)}\0` },
    { case: 'nothing', id: '' },
  ])('$case is missing', ({ id }) => {
    const folder = temporaryFolder();
    writePaper(folder, BYTES);
    expect(readPaper(folder, id)).toEqual({ state: 'missing' });
  });

  test.each([
    { case: 'a byte changed', bytes: Buffer.concat([BYTES.subarray(1), Buffer.from('x')]) },
    { case: 'cut short', bytes: BYTES.subarray(0, 10) },
    { case: 'emptied', bytes: Buffer.alloc(0) },
    { case: 'made longer', bytes: Buffer.concat([BYTES, Buffer.from('x')]) },
  ])('$case is altered', ({ bytes }) => {
    const folder = temporaryFolder();
    writePaper(folder, BYTES);
    writeFileSync(paperPath(folder, ID), bytes);
    expect(readPaper(folder, ID)).toEqual({ state: 'altered' });
    expect(existsSync(paperPath(folder, ID))).toBe(true);
  });
});
