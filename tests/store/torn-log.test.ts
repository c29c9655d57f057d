import { copyFileSync, cpSync, existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { databaseFile } from '../../electron/host/household-folder.ts';
import { sampleRandom } from '../../shared-core/sample/sample-random.ts';
import { openTestHost, temporaryFolder, type TestHost } from '../host/open-test-host.ts';
import { killPlan } from './kill-plan.ts';

// Source: SQLite file format, WAL: header of 32 bytes, frames of 24 + page size (from memory, recomputed); a torn last frame loses
// only its own commit (recomputed). The cuts stand for a power cut in the middle of a write.
const WAL_HEADER = 32;
const FRAME = 24 + 4096;
const CUTS = 24;

interface Made {
  readonly host: TestHost;
  /** Size of the log, and number of entries, after each step. */
  readonly steps: readonly { readonly walBytes: number; readonly entries: number }[];
}

async function makeEntries(): Promise<Made> {
  const host = openTestHost();
  const steps: { walBytes: number; entries: number }[] = [];
  let entries = 0;
  for (const step of killPlan(11)) {
    const reply = await host.composed.call(step.operation, step.request);
    if (!reply.ok) throw new Error(JSON.stringify(reply.refusal));
    entries += step.entries;
    steps.push({ walBytes: statSync(`${databaseFile(host.folder)}-wal`).size, entries });
  }
  return { host, steps };
}

/** A copy of the folder as the disk had it, the log changed by `tear`. */
function tornCopy(from: string, tear: (wal: Buffer) => Buffer): string {
  const folder = join(temporaryFolder(), 'household');
  mkdirSync(folder);
  copyFileSync(databaseFile(from), databaseFile(folder));
  copyFileSync(join(from, 'key'), join(folder, 'key'));
  cpSync(join(from, 'papers'), join(folder, 'papers'), { recursive: true });
  writeFileSync(`${databaseFile(folder)}-wal`, tear(readFileSync(`${databaseFile(from)}-wal`)));
  return folder;
}

async function entriesAfter(folder: string): Promise<number> {
  const host = openTestHost({ folder });
  const examined = await host.must('household.examine', {});
  expect(examined.faults).toEqual([]);
  await host.composed.close();
  rmSync(folder, { recursive: true });
  return examined.entries;
}

test('a log cut anywhere gives the whole commits before the cut, and a sound household', async () => {
  const { host, steps } = await makeEntries();
  const size = steps.at(-1)?.walBytes ?? 0;
  expect((size - WAL_HEADER) % FRAME).toBe(0);
  expect(existsSync(databaseFile(host.folder))).toBe(true);
  const random = sampleRandom(17);
  const edges = steps.flatMap(({ walBytes }) => [walBytes, walBytes - 1]);
  const cuts = [...Array.from({ length: CUTS / 2 }, () => edges[Math.floor(random() * edges.length)] ?? 0), ...Array.from({ length: CUTS / 2 }, () => Math.floor(random() * size))];
  for (const cut of cuts) {
    const expected = steps.findLast(({ walBytes }) => walBytes <= cut)?.entries ?? 0;
    expect(await entriesAfter(tornCopy(host.folder, (wal) => wal.subarray(0, cut))), `log cut at byte ${cut} of ${size}`).toBe(expected);
  }
});

test('a last frame of rubbish loses its own commit and no other', async () => {
  const { host, steps } = await makeEntries();
  const folder = tornCopy(host.folder, (wal) => Buffer.concat([wal.subarray(0, -FRAME), Buffer.alloc(FRAME, 0xa5)]));
  expect(await entriesAfter(folder)).toBe(steps.at(-2)?.entries);
});
