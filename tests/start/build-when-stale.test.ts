import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { buildWhenStale, type Built } from '../../electron/start/build-when-stale.ts';

let project = '';
let builds = 0;
const said: string[] = [];

beforeEach(() => {
  project = mkdtempSync(path.join(os.tmpdir(), 'stale-'));
  builds = 0;
  said.length = 0;
  mkdirSync(path.join(project, 'renderer/app'), { recursive: true });
  write('renderer/app/main.tsx', 'one');
  write('lock.json', '{}');
});
afterEach(() => rmSync(project, { recursive: true }));

const write = (file: string, text: string) => writeFileSync(path.join(project, file), text);
const built = (build: Built['build'] = () => Promise.resolve()): Built => ({
  name: 'page',
  sources: ['renderer', 'lock.json', 'not-there'],
  result: 'dist/page/index.html',
  async build() {
    await build();
    builds += 1;
    mkdirSync(path.join(project, 'dist/page'), { recursive: true });
    write('dist/page/index.html', 'built');
  },
});
const start = (one = built()) => buildWhenStale(project, one, (line) => said.push(line));

test('builds once, and says so', async () => {
  await start();
  await start();
  expect({ builds, said }).toEqual({ builds: 1, said: ['Building the page. This is done again only when the program has changed.'] });
});

test.each([
  { case: 'a source changed', change: () => write('renderer/app/main.tsx', 'two') },
  { case: 'a source was added', change: () => write('renderer/app/more.tsx', '') },
  { case: 'a source was renamed', change: () => renameSync(path.join(project, 'renderer/app/main.tsx'), path.join(project, 'renderer/app/page.tsx')) },
  { case: 'the lock changed', change: () => write('lock.json', '{"a":1}') },
  { case: 'the result is gone', change: () => rmSync(path.join(project, 'dist/page'), { recursive: true }) },
])('builds again where $case', async ({ change }) => {
  await start();
  change();
  await start();
  expect(builds).toBe(2);
});

test('a build that breaks off is done again, though its old result is there', async () => {
  await start();
  write('renderer/app/main.tsx', 'two');
  await expect(start(built(() => Promise.reject(new Error('no'))))).rejects.toThrow('no');
  write('renderer/app/main.tsx', 'one');
  expect(existsSync(path.join(project, 'dist/page/index.html'))).toBe(true);
  await start();
  expect(builds).toBe(2);
});
