import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { hexText } from '../../shared-core/journal/hex-text.ts';
import { sha256 } from '../../electron/host/node-digests.ts';
import { readPaper } from '../../electron/papers/read-paper.ts';
import { paperPath } from '../../electron/papers/write-paper.ts';
import { writePapers } from '../../electron/papers/write-papers.ts';
import { temporaryFolder } from '../host/open-test-host.ts';
import { disk } from './failing-disk.ts';

vi.mock('node:fs', async (original) => (await import('./failing-disk.ts')).failingFs(await original()));

const THREE = ['first', 'second', 'third'].map((word) => Buffer.alloc(30_000, `${word} paper `));
const IDS = THREE.map((bytes) => hexText(sha256(bytes)));

beforeEach(() => {
  disk.fault = null;
  disk.calls = [];
});

const states = (folder: string) => IDS.map((id) => readPaper(folder, id).state);
const parts = (folder: string) => readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.part'));

describe('writing several papers', () => {
  test('waits for the disk for all bytes before any name, and for each folder once after the names', async () => {
    const folder = temporaryFolder();
    expect(await writePapers(folder, [...THREE, THREE[0] ?? Buffer.alloc(0)])).toEqual([...IDS, IDS[0]].map((value) => ({ ok: true, value })));
    expect(states(folder)).toEqual(['whole', 'whole', 'whole']);
    const order = disk.calls.filter((name) => name === 'fsync' || name === 'renameSync');
    const folders = new Set(IDS.map((id) => id.slice(0, 2))).size + 1;
    expect(order).toEqual([...Array<string>(3).fill('fsync'), ...Array<string>(3).fill('renameSync'), ...Array<string>(folders).fill('fsync')]);
  });

  test('writes nothing that is there, and puts right what is there with other bytes', async () => {
    const folder = temporaryFolder();
    const [first = '', second = ''] = IDS;
    await writePapers(folder, THREE.slice(0, 1));
    mkdirSync(dirname(paperPath(folder, second)), { recursive: true });
    writeFileSync(paperPath(folder, second), 'other bytes');
    disk.calls = [];
    await writePapers(folder, THREE.slice(0, 2));
    expect(disk.calls.filter((name) => name === 'renameSync')).toEqual(['renameSync']);
    expect([readPaper(folder, first).state, readPaper(folder, second).state]).toEqual(['whole', 'whole']);
  });

  // Source: how SQLite tests itself for full disks: fail at call n, n = 1, 2, 3, until one goes through, then look (testing.html s3: seen).
  test.each(['once', 'crash'] as const)('each is whole or not at all and answered as it is, wherever the disk fails (%s)', async (how) => {
    disk.calls = [];
    await writePapers(temporaryFolder(), THREE);
    const calls = disk.calls.length;
    expect(calls).toBeGreaterThan(20);
    for (let at = 1; at <= calls; at += 1) {
      const folder = temporaryFolder();
      disk.calls = [];
      disk.fault = { at, how };
      const answers = await writePapers(folder, THREE);
      disk.fault = null;
      const found = states(folder);
      for (const [n, answer] of answers.entries()) {
        expect(['whole', 'missing'], `fault at call ${at}`).toContain(found[n]);
        if (answer.ok) expect(found[n], `fault at call ${at}`).toBe('whole');
        else expect(answer.refusal.code).toBe('disk-full');
      }
      expect(answers.some((one) => !one.ok), `fault at call ${at}`).toBe(true);
      if (how === 'once') {
        expect(parts(folder), `fault at call ${at}`).toEqual([]);
        expect(found.filter((one) => one === 'whole').length, `fault at call ${at}`).toBeGreaterThanOrEqual(2);
      }
      expect((await writePapers(folder, THREE)).every((one) => one.ok)).toBe(true);
      expect(states(folder)).toEqual(['whole', 'whole', 'whole']);
    }
  });
});
