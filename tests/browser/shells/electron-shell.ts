import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { _electron } from 'playwright-core';
import type { Shell, ShellOptions } from './shell.ts';

const PROJECT = new URL('../../../', import.meta.url).pathname;

/** The true window, where Electron's program is to be had: the package `electron` knows where. Its own files go into a folder of the run. */
export async function electronShell({ household, on, onPage }: ShellOptions): Promise<Shell> {
  const own = mkdtempSync(join(tmpdir(), 'window-'));
  const { default: program } = (await import('electron')) as unknown as { readonly default: string };
  const running = await _electron.launch({ executablePath: program, args: [`--user-data-dir=${own}`, PROJECT, '--household', household, '--on', on] });
  const page = await running.firstWindow();
  onPage(page);
  await page.waitForLoadState();
  let runs = true;
  return {
    page,
    alter: () => Promise.reject(new Error('in the true window nothing stands between the page and its program')),
    stop: async () => {
      if (runs) await running.close();
      rmSync(own, { recursive: true, force: true });
    },
    kill: async () => {
      runs = false;
      const exit = once(running.process(), 'exit');
      running.process().kill('SIGKILL');
      await exit;
    },
    pageOutlivesProgram: false,
  };
}
