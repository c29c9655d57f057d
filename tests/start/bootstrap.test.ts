import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const START = new URL('../../electron/start/', import.meta.url).pathname;
const PROJECT = new URL('../../', import.meta.url).pathname;

/** A project of its own with the real start files, a task to run, and an npm that does as it is told. */
let root = '';

beforeAll(() => {
  root = mkdtempSync(path.join(os.tmpdir(), 'bootstrap-'));
  cpSync(START, path.join(root, 'electron/start'), { recursive: true });
  mkdirSync(path.join(root, 'electron/cli'));
  writeFileSync(path.join(root, 'electron/cli/trunnion.ts'), task);
  writeFileSync(path.join(root, 'package-lock.json'), JSON.stringify({ packages: { '': {}, 'node_modules/a': { version: '1.0.0' } } }));
  writeFileSync(path.join(root, 'npm-cli.js'), npm);
});
afterAll(() => rmSync(root, { recursive: true }));

const task = `
const [first = ''] = process.argv.slice(2);
process.on('SIGTERM', () => process.exit(41));
console.log(JSON.stringify({ args: process.argv.slice(2), cwd: process.cwd() }));
if (first === 'wait') setInterval(() => {}, 1000);
else process.exitCode = Number(first);
`;
const npm = `
const fs = require('node:fs');
fs.appendFileSync('npm-calls', process.argv.slice(2).join(' ') + '\\n');
console.log('npm speaks');
if (process.argv[2] === 'ci') {
  if (process.env.BREAK_NPM) process.exit(7);
  fs.mkdirSync('node_modules', { recursive: true });
  fs.writeFileSync('node_modules/.package-lock.json', '{"packages":{}}');
  if (process.env.WITHOUT_NODE) return;
  fs.mkdirSync('node_modules/node/bin', { recursive: true });
  fs.symlinkSync(process.execPath, 'node_modules/node/bin/node');
}
`;

/** Runs on the Node that runs the tests, unless `version` makes it believe it is another. */
function bootstrap(args: string[], { version, ...env }: Record<string, string> = {}) {
  rmSync(path.join(root, 'npm-calls'), { force: true });
  const pretend = `Object.defineProperty(process, 'versions', { value: { ...process.versions, node: '${version ?? ''}' } });
    Object.defineProperty(process, 'version', { value: 'v${version ?? ''}' });`;
  const preload = version === undefined ? [] : ['--import', `data:text/javascript,${encodeURIComponent(pretend)}`];
  const ran = spawnSync(process.execPath, [...preload, path.join(root, 'electron/start/bootstrap.mjs'), ...args], {
    encoding: 'utf8',
    env: { ...process.env, npm_execpath: path.join(root, 'npm-cli.js'), npm_node_execpath: process.execPath, ...env },
  });
  const calls = path.join(root, 'npm-calls');
  return { status: ran.status, out: ran.stdout, err: ran.stderr, npm: existsSync(calls) ? readFileSync(calls, 'utf8') : '' };
}

const forget = () => rmSync(path.join(root, 'node_modules'), { recursive: true, force: true });

describe('the first run', () => {
  test('installs once, from the lock, and keeps standard output for the task', () => {
    forget();
    const first = bootstrap(['trunnion', '0', 'due', '--json']);
    expect(first).toMatchObject({ status: 0, npm: expect.stringMatching(/^ci /) as string });
    expect(JSON.parse(first.out)).toMatchObject({ args: ['0', 'due', '--json'] });
    expect(first.err).toContain('Installing what Trunnion needs');
    expect(first.err).toContain('npm speaks');
    const second = bootstrap(['trunnion', '0']);
    expect(second).toMatchObject({ status: 0, npm: '', err: '' });
  });

  test('says so when the installation fails, and tries again the next time', () => {
    forget();
    const failed = bootstrap(['trunnion', '0'], { BREAK_NPM: '1' });
    expect(failed).toMatchObject({ status: 1, out: '' });
    expect(failed.err).toContain('npm ended with 7');
    expect(bootstrap(['trunnion', '0']).npm).toMatch(/^ci /);
  });
});

describe('what the task answers', () => {
  test.each([0, 1, 2])('exit status %i is passed on', (status) => {
    expect(bootstrap(['trunnion', String(status)]).status).toBe(status);
  });

  test('a signal reaches the task, whose own ending is passed on', async () => {
    const child = spawn(process.execPath, [path.join(root, 'electron/start/bootstrap.mjs'), 'trunnion', 'wait']);
    await once(child.stdout, 'data');
    child.kill('SIGTERM');
    expect(await once(child, 'exit')).toEqual([41, null]);
  });

  test('runs where the person stands when npm has moved away', () => {
    const there = { npm_lifecycle_event: 'trunnion', INIT_CWD: os.tmpdir() };
    expect(JSON.parse(bootstrap(['trunnion', '0'], there).out)).toMatchObject({ cwd: os.tmpdir() });
  });

  test('the bin is the same door', () => {
    const bin = path.join(root, 'electron/start/trunnion.mjs');
    chmodSync(bin, 0o755);
    expect(spawnSync(bin, ['1', 'due'], { encoding: 'utf8' })).toMatchObject({ status: 1, stdout: expect.stringContaining('"due"') as string });
  });
});

describe('a Node that will not do', () => {
  test('before 20: a sentence and status 1', () => {
    const ran = bootstrap(['trunnion', '0'], { version: '18.20.0' });
    expect(ran).toMatchObject({ status: 1, out: '', npm: '' });
    expect(ran.err).toBe('Trunnion needs Node 20 or later, and this is v18.20.0. Install a newer Node, then try again.\n');
  });

  test('20 without the pinned Node: never run on it', () => {
    forget();
    const ran = bootstrap(['trunnion', '0'], { version: '20.20.2', WITHOUT_NODE: '1' });
    expect(ran).toMatchObject({ status: 1, out: '' });
    expect(ran.npm).toContain('rebuild node');
    expect(ran.err).toContain("Trunnion's own Node (24) is not installed, and this one, v20.20.2, is too old");
    forget();
  });

  test('24 without the pinned Node: used, and said', () => {
    const ran = bootstrap(['trunnion', '0'], { version: '24.1.0', WITHOUT_NODE: '1' });
    expect(ran).toMatchObject({ status: 0 });
    expect(ran.err).toContain('using this one, v24.1.0');
    forget();
  });
});

describe('the names', () => {
  test('an unknown task lists those there are, status 2', () => {
    const ran = bootstrap(['fly']);
    expect(ran).toMatchObject({ status: 2, out: '' });
    expect(ran.err).toContain('There is no task "fly"');
  });

  test('every npm script is a task of its own name', async () => {
    const { taskNames } = (await import(`${START}tasks.mjs`)) as { taskNames: string[] };
    const { scripts } = JSON.parse(readFileSync(path.join(PROJECT, 'package.json'), 'utf8')) as { scripts: Record<string, string> };
    expect(scripts).toEqual(Object.fromEntries(taskNames.map((name) => [name, `node electron/start/bootstrap.mjs ${name}`])));
  });
});
