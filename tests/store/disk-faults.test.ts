import { execFileSync, spawnSync } from 'node:child_process';
import { chownSync, chmodSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test, type TestContext } from 'vitest';
import { temporaryFolder } from '../host/open-test-host.ts';

// Real faults, met by a process of its own: a small disk in memory that fills up or is made read-only, folders without permission,
// and a limit on the size of files. Each code is of DESIGN.md section 9: refused, nothing half-saved, and on it goes afterwards.
const CHILD = fileURLToPath(new URL('./fault-child.ts', import.meta.url));
const NOBODY = 65_534;

/** Whether this machine lets a process have a small disk of its own. */
function hasOwnDisks(): boolean {
  return process.platform === 'linux' && spawnSync('unshare', ['-rm', 'mount', '-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', '/tmp']).status === 0;
}

function came(stdout: string): Record<string, unknown> {
  return JSON.parse(stdout) as Record<string, unknown>;
}

/** Runs a scenario on a disk in memory of so many megabytes, which goes with the process. */
function onSmallDisk(context: TestContext, scenario: string, megabytes: number): Record<string, unknown> {
  if (!hasOwnDisks()) context.skip('this machine gives no process a disk of its own (unshare, mount)');
  const disk = temporaryFolder();
  const command = 'mount -t tmpfs -o size="$1"m tmpfs "$2" && exec "$3" "$4" "$5" "$2"';
  return came(execFileSync('unshare', ['-rm', 'sh', '-c', command, 'sh', String(megabytes), disk, process.execPath, CHILD, scenario], { encoding: 'utf8' }));
}

describe('a full disk', () => {
  test('while a household is open: every change is refused or whole, and all goes on when there is room', (context) => {
    const result = onSmallDisk(context, 'full while open', 8);
    const changes = result['changes'] as { went: number; code: string };
    expect(changes.code).toBe('disk-full');
    expect(changes.went).toBeGreaterThan(10);
    expect(result).toMatchObject({
      paper: 'disk-full',
      backup: 'disk-full',
      sample: 'disk-full',
      read: 'done',
      unfinished: [],
      examined: { entries: 2 + changes.went, papers: 0, faults: [] },
      afterwards: ['done', 'done', 'done'],
      'examined afterwards': { entries: 2 + changes.went + 2, papers: 1, faults: [] },
    });
  });

  test('at the first start: refused, and started when there is room, however little there was', (context) => {
    const opening = onSmallDisk(context, 'full at the start', 2)['opening'] as Record<string, string>;
    const codes = Object.entries(opening).filter(([left]) => !left.includes('room')).map(([, code]) => code);
    expect(codes.slice(0, 5)).toEqual(Array(5).fill('disk-full'));
    expect(codes.filter((code) => !['done', 'disk-full', 'key-not-saved'].includes(code))).toEqual([]);
    expect(Object.entries(opening).filter(([left, code]) => left.includes('room') && code !== 'done')).toEqual([]);
  });

  test('at a later start: opened or refused, and sound when there is room', (context) => {
    const result = onSmallDisk(context, 'full at the next start', 2);
    expect((result['opening'] as string[]).filter((code) => !['done', 'disk-full'].includes(code))).toEqual([]);
    expect(result['examined afterwards']).toEqual({ entries: 2, papers: 0, faults: [] });
  });
});

test('a disk that is read-only is refused with that sentence, and opened when it can be written', (context) => {
  expect(onSmallDisk(context, 'read-only', 4)).toEqual({ opening: 'folder-read-only', 'opening anew': 'folder-read-only', 'examined afterwards': { entries: 2, papers: 0, faults: [] } });
});

test('folders and files without permission are refused with that sentence, and used when they are given back', (context) => {
  if (process.platform === 'win32') context.skip('permissions are another thing there');
  const disk = temporaryFolder();
  if (process.getuid?.() === 0) chownSync(disk, NOBODY, NOBODY);
  chmodSync(disk, 0o700);
  expect(came(execFileSync(process.execPath, [CHILD, 'not permitted', disk], { encoding: 'utf8' }))).toEqual({
    paper: 'folder-read-only',
    backup: 'folder-read-only',
    examined: { entries: 2, papers: 0, faults: [] },
    'paper afterwards': 'done',
    'opening a file not to be written': 'folder-read-only',
    'opening a file not to be read': 'folder-read-only',
    'opening anew': 'folder-read-only',
    // A log that cannot be made beside the database is told by it only as a file that cannot be opened.
    unopened: ['folder-read-only', 'folder-unreachable'],
    'unopened otherwise': 'folder-unreachable',
    'examined afterwards': { entries: 3, papers: 1, faults: [] },
  });
});

test('where files may not grow, changes are refused, nothing is there by half, and it can still be read', (context) => {
  if (process.platform === 'win32') context.skip('there is no such limit there');
  const result = came(execFileSync('sh', ['-c', 'ulimit -f 1024 && exec "$@"', 'sh', process.execPath, CHILD, 'files may not grow', temporaryFolder()], { encoding: 'utf8' }));
  const changes = result['changes'] as { went: number; code: string };
  expect(changes.code).toMatch(/^disk-(fails|full)$/);
  expect(result).toMatchObject({ paper: 'disk-full', read: 'done', unfinished: [], examined: { entries: 2 + changes.went, papers: 0, faults: [] } });
});
