import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hasDisplay, openElectron } from '../../electron/start/open-electron.ts';
import { readStartOptions } from '../../electron/start/start-options.ts';

let project = '';
const said: string[] = [];
beforeEach(() => {
  project = mkdtempSync(path.join(os.tmpdir(), 'electron-'));
  mkdirSync(path.join(project, 'package/dist'), { recursive: true });
  said.length = 0;
});
afterEach(() => rmSync(project, { recursive: true }));

const PROGRAM = `#!/bin/sh\necho "$@" > "$(dirname "$0")/arguments"\nexit $ENDS_WITH\n`;
const at = (file: string) => path.join(project, file);
const open = (endsWith = 0, insist = false) =>
  openElectron({ project, package: at('package'), env: { ...process.env, ENDS_WITH: String(endsWith) }, platform: 'linux', args: ['--household', 'x'], insist }, (line) => said.push(line));

/** The package's download, which here only leaves what a download leaves. */
function downloadThat(works: boolean): void {
  const fetched = `fs.writeFileSync('${at('package/dist/electron')}', ${JSON.stringify(PROGRAM)}, { mode: 0o755 }); fs.writeFileSync('${at('package/path.txt')}', 'electron');`;
  writeFileSync(at('package/package.json'), '{"type":"commonjs"}');
  writeFileSync(at('package/install.js'), `const fs = require('node:fs'); fs.appendFileSync('${at('asked')}', 'x'); ${works ? fetched : 'process.exit(1)'}`);
}
function thereAlready(): void {
  writeFileSync(at('package/dist/electron'), PROGRAM);
  chmodSync(at('package/dist/electron'), 0o755);
  writeFileSync(at('package/path.txt'), 'electron');
}
const asked = () => (existsSync(at('asked')) ? readFileSync(at('asked'), 'utf8').length : 0);

describe('the window', () => {
  test.each([
    { terminal: true, heard: 0 },
    { terminal: false, heard: 1 },
  ])('is asked to stop once: by Ctrl-C in a terminal (here $terminal) it is by the terminal itself', async ({ terminal, heard }) => {
    thereAlready();
    writeFileSync(at('package/dist/electron'), `#!/bin/sh\ntrap 'echo x >> ${at('heard')}' INT\necho > ${at('up')}\nfor n in 1 2 3 4 5 6 7 8; do sleep 0.1; done\nexit 0\n`);
    const before = Object.getOwnPropertyDescriptor(process.stdin, 'isTTY');
    Object.defineProperty(process.stdin, 'isTTY', { value: terminal, configurable: true });
    const others = process.listeners('SIGINT');
    process.removeAllListeners('SIGINT');
    try {
      const ended = open();
      await expect.poll(() => existsSync(at('up'))).toBe(true);
      process.emit('SIGINT', 'SIGINT');
      expect(await ended).toEqual({ opened: true, status: 0 });
    } finally {
      for (const other of others) process.on('SIGINT', other);
      if (before === undefined) Reflect.deleteProperty(process.stdin, 'isTTY');
      else Object.defineProperty(process.stdin, 'isTTY', before);
    }
    expect(existsSync(at('heard')) ? readFileSync(at('heard'), 'utf8').length / 2 : 0).toBe(heard);
  });

  test('opens with the project and the person’s own words', async () => {
    thereAlready();
    expect(await open()).toEqual({ opened: true, status: 0 });
    expect(readFileSync(at('package/dist/arguments'), 'utf8')).toBe(`${project} --household x\n`);
    expect(said).toEqual([]);
  });

  test.each([
    { case: 'ends well', status: 0, opened: true },
    { case: 'has told why it cannot open the household', status: 3, opened: true },
    { case: 'ends at once with a fault', status: 1, opened: false },
    { case: 'cannot be loaded', status: 127, opened: false },
  ])('that $case ($status): opened $opened', async ({ status, opened }) => {
    thereAlready();
    expect(await open(status)).toMatchObject(opened ? { opened, status } : { opened, why: `No window: Electron ended at once (status ${status}).` });
  });

  test('is fetched where it is missing', async () => {
    downloadThat(true);
    expect(await open()).toEqual({ opened: true, status: 0 });
    expect(said).toEqual(['Fetching Electron for the window; this is tried for a minute at most.']);
  });
});

describe('a window that cannot be fetched', () => {
  test('is said, and not asked for again at the next start', async () => {
    downloadThat(false);
    expect(await open()).toMatchObject({ opened: false, why: expect.stringContaining('could not be fetched') as string });
    expect(await open()).toMatchObject({ opened: false });
    expect(asked()).toBe(1);
  });

  test('is asked for again a day later, or when the person insists', async () => {
    downloadThat(false);
    await open();
    await open(0, true);
    expect(asked()).toBe(2);
    const yesterday = Date.now() / 1000 - 25 * 3600;
    utimesSync(at('dist/electron-not-fetched'), yesterday, yesterday);
    await open();
    expect(asked()).toBe(3);
  });
});

test.each([
  { platform: 'linux', env: {}, seen: false },
  { platform: 'linux', env: { DISPLAY: '' }, seen: false },
  { platform: 'linux', env: { DISPLAY: ':0' }, seen: true },
  { platform: 'linux', env: { WAYLAND_DISPLAY: 'wayland-0' }, seen: true },
  { platform: 'darwin', env: {}, seen: true },
  { platform: 'win32', env: {}, seen: true },
] as const)('a display on $platform with $env: $seen', ({ platform, env, seen }) => {
  expect(hasDisplay(env, platform)).toBe(seen);
});

test.each([
  { words: [], value: { browser: false, window: false, household: null, help: false } },
  { words: ['--browser'], value: { browser: true } },
  { words: ['--household', '/cars'], value: { household: '/cars' } },
  { words: ['--window'], value: { window: true } },
])('npm start -- $words', ({ words, value }) => {
  expect(readStartOptions(words)).toMatchObject({ ok: true, value });
});

test.each([{ words: ['--brwoser'] }, { words: ['now'] }, { words: ['--household'] }])('npm start -- $words is not understood', ({ words }) => {
  expect(readStartOptions(words)).toMatchObject({ ok: false, why: expect.stringMatching(/.{10}/) as string });
});
