import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';

interface InstalledState {
  isInstalled: (root: string) => boolean;
  stampInstalled: (root: string) => void;
}
const { isInstalled, stampInstalled } = (await import(
  new URL('../../electron/start/installed-state.mjs', import.meta.url).href
)) as InstalledState;

const LOCK = { '': { name: 'x' }, 'node_modules/a': { version: '1.0.0' }, 'node_modules/b': { version: '2.0.0', optional: true } };
const folders: string[] = [];

function project(lock: object, record: object | string | null): string {
  const root = mkdtempSync(path.join(os.tmpdir(), 'installed-'));
  folders.push(root);
  mkdirSync(path.join(root, 'node_modules'));
  writeFileSync(path.join(root, 'package-lock.json'), JSON.stringify({ packages: lock }));
  const text = typeof record === 'string' ? record : JSON.stringify({ packages: record });
  if (record !== null) writeFileSync(path.join(root, 'node_modules', '.package-lock.json'), text);
  return root;
}

afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

describe('whether an installation is what the lock asks for', () => {
  test.each([
    { case: 'nothing installed', record: null, installed: false },
    { case: 'installed by hand, all there', record: { 'node_modules/a': { version: '1.0.0' } }, installed: true },
    { case: 'an older version is there', record: { 'node_modules/a': { version: '0.9.0' } }, installed: false },
    { case: 'a package is missing', record: {}, installed: false },
    { case: 'the record is broken', record: '{ "packa', installed: false },
  ])('$case: $installed', ({ record, installed }) => {
    expect(isInstalled(project(LOCK, record))).toBe(installed);
  });

  test('a stamp holds until the lock file changes', () => {
    const root = project(LOCK, {});
    stampInstalled(root);
    expect(isInstalled(root)).toBe(true);
    writeFileSync(path.join(root, 'package-lock.json'), JSON.stringify({ packages: { 'node_modules/c': { version: '1.0.0' } } }));
    expect(isInstalled(root)).toBe(false);
  });

  test('a stamp without the record of a finished installation is not believed', () => {
    const root = project(LOCK, null);
    stampInstalled(root);
    expect(isInstalled(root)).toBe(false);
  });
});
