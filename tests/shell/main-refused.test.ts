import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, expect, test, vi } from 'vitest';
import { REFUSED_STATUS } from '../../electron/start/window-status.ts';
import { standIn, StandInWindow } from './electron-stand-in.ts';

vi.mock('electron', async () => (await import('./electron-stand-in.ts')).standIn);

const heardBefore = { uncaughtException: process.listenerCount('uncaughtException'), unhandledRejection: process.listenerCount('unhandledRejection') };
const folder = mkdtempSync(path.join(os.tmpdir(), 'main-refused-'));
afterAll(() => rmSync(folder, { recursive: true }));
afterEach(() => {
  vi.resetModules();
  standIn.app.removeAllListeners();
  for (const name of ['uncaughtException', 'unhandledRejection'] as const) process.listeners(name as 'uncaughtException').slice(heardBefore[name]).forEach((listener) => process.off(name, listener));
  for (const { calls } of [standIn.app.exit, standIn.dialog.showErrorBox]) calls.length = 0;
});

/** Starts the program anew with these words; what it said in its box before it ended without a window. */
async function saidWhenStarted(...words: string[]): Promise<unknown[][]> {
  process.argv = ['electron', '.', ...words];
  await import('../../electron/main.ts');
  await vi.waitFor(() => expect(standIn.app.exit.calls).toEqual([[REFUSED_STATUS]]));
  expect(StandInWindow.opened).toEqual([]);
  return [...standIn.dialog.showErrorBox.calls];
}

test('a household that cannot be opened is said in a sentence, and the program ends without a window', async () => {
  writeFileSync(path.join(folder, 'file'), '');
  vi.stubEnv('TRUNNION_HOUSEHOLD', path.join(folder, 'file', 'household'));
  expect(await saidWhenStarted()).toEqual([['Trunnion', expect.stringMatching(/^[A-Z].{10,}\.$/) as string]]);
});

test.each([['--on', '2026-02-29', 'There is no such date'], ['--household', '', 'After --household comes a folder']])('%s %o cannot be meant: said in the same way', async (option, value, sentence) => {
  vi.stubEnv('TRUNNION_HOUSEHOLD', path.join(folder, 'household'));
  expect(await saidWhenStarted(`${option}=${value}`)).toEqual([['Trunnion', expect.stringMatching(new RegExp(`^${sentence}\\b.*\\.$`)) as string]]);
});

test('a packaged program started without its sandbox is not opened', async () => {
  Object.assign(standIn.app, { isPackaged: true, commandLine: { hasSwitch: (name: string) => name === 'no-sandbox' } });
  vi.stubEnv('TRUNNION_HOUSEHOLD', path.join(folder, 'household'));
  expect(await saidWhenStarted('--no-sandbox')).toEqual([['Trunnion', expect.stringContaining('without its sandbox') as string]]);
  Object.assign(standIn.app, { isPackaged: false, commandLine: { hasSwitch: () => false } });
});
