import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { makeFolder } from '../../electron/host/make-folder.ts';
import { temporaryFolder } from './open-test-host.ts';

test('makes a folder with those above it, and lets one that is there be', () => {
  const path = join(temporaryFolder(), 'a', 'b', 'c');
  makeFolder(path);
  makeFolder(path);
  expect(existsSync(path)).toBe(true);
});

test('throws, and ends, where a file stands in the way', () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'file'), '');
  expect(() => makeFolder(join(folder, 'file', 'x'))).toThrow(/ENOTDIR/);
});

// The runtime's own recursive way never ended here.
test.skipIf(process.platform !== 'linux')('throws, and ends, where the system has no room for folders (needs /proc)', () => {
  expect(() => makeFolder('/proc/x/y')).toThrow(/ENOENT/);
});
