import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { readStartOptions, readWindowOptions, START_HELP } from '../../electron/start/start-options.ts';

const NOTHING = { browser: false, window: false, household: null, on: null, help: false };

describe('the words after npm start', () => {
  test('name the browser, a household and a day', () => {
    vi.stubEnv('INIT_CWD', '/home/me');
    expect(readStartOptions(['--browser', '--household', 'cars', '--on', '2026-11-25'])).toEqual({ ok: true, value: { ...NOTHING, browser: true, household: path.resolve('/home/me/cars'), on: '2026-11-25' } });
    expect(readStartOptions([])).toEqual({ ok: true, value: NOTHING });
  });

  // The same dates are taken and refused as by --on of the commands.
  test.each(['2026-02-29', '2026-11-31', 'today', '25.11.2026', '1899-12-31', ''])('%o is no day: said in a sentence', (on) => {
    for (const read of [readStartOptions, readWindowOptions]) expect(read([`--on=${on}`])).toEqual({ ok: false, why: expect.stringMatching(/^There is no such date\..*\.$/) as string });
  });

  test('every option is in the help', () => {
    for (const option of ['--browser', '--window', '--household', '--on', '--help']) expect(START_HELP).toContain(option);
  });
});

describe('the words of a window', () => {
  test('leave those of Chromium and of the system alone', () => {
    expect(readWindowOptions(['--no-sandbox', '--lang=de', '-psn_0_1', 'a.zip', '--on', '2026-11-25'])).toEqual({ ok: true, value: { ...NOTHING, on: '2026-11-25' } });
    expect(readStartOptions(['--no-sandbox']).ok).toBe(false);
  });

  test.each([['--household'], ['--household='], ['--on']])('%s alone names nothing', (word) => {
    expect(readWindowOptions([word]).ok).toBe(false);
  });
});

const START = path.resolve(import.meta.dirname, '../../electron/start/start.ts');

test('a bad day ends npm start with status 2 before anything is built or opened', () => {
  const run = spawnSync(process.execPath, [START, '--browser', '--on', '2026-02-29'], { encoding: 'utf8' });
  expect([run.status, run.stdout]).toEqual([2, '']);
  expect(run.stderr).toMatch(/^There is no such date\..*\.\n\nnpm start/);
});

test('the browser’s dashboard works as if it were that day', async () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'start-on-'));
  const served = spawn(process.execPath, [START, '--browser', '--household', path.join(folder, 'household'), '--on', '2031-01-02'], { stdio: ['ignore', 'pipe', 'ignore'], env: { ...process.env, DISPLAY: '', WAYLAND_DISPLAY: '' } });
  const ended = once(served, 'exit');
  try {
    const [printed] = (await once(served.stdout, 'data')) as [Buffer];
    const link = new URL(/http\S+/.exec(String(printed))?.[0] ?? '');
    const cookie = (await fetch(link, { redirect: 'manual' })).headers.get('set-cookie')?.split(';')[0] ?? '';
    const ask = async (operation: string, request: unknown): Promise<unknown> =>
      (await fetch(new URL(`/operations/${operation}`, link), { method: 'POST', headers: { cookie, origin: link.origin, 'content-type': 'application/json' }, body: JSON.stringify(request) })).json();
    await ask('household.start', { name: 'Ours', currency: 'GBP' });
    expect(await ask('due.show', {})).toMatchObject({ ok: true, value: { today: '2031-01-02' } });
  } finally {
    served.kill('SIGTERM');
    await ended;
    rmSync(folder, { recursive: true });
  }
});
