import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { openShell } from './shells/open-shell.ts';
import type { Shell } from './shells/shell.ts';

/** A household in a real Chromium, through one of the shells. */
export interface ServedPage {
  readonly page: Page;
  /** What the page complained of; to be empty at the end. */
  readonly complaints: readonly string[];
  /** The household's folder. */
  readonly household: string;
  /** Stands between host and page for one operation; the answer ends it. */
  readonly alter: Shell['alter'];
  close(): Promise<void>;
}

interface ServedPageOptions {
  readonly context?: BrowserContextOptions;
  /** Fills the household before it is served; without it the page shows a first start. */
  readonly fill?: (household: string) => Promise<void>;
}

/** Opens a fresh household on 25 November 2026. */
export async function openServedPage({ context, fill }: ServedPageOptions = {}): Promise<ServedPage> {
  const folder = mkdtempSync(join(tmpdir(), 'served-page-'));
  const household = join(folder, 'household');
  await fill?.(household);
  const complaints: string[] = [];
  const shell = await openShell({
    household,
    on: '2026-11-25',
    context: { locale: 'en-GB', viewport: { width: 1280, height: 800 }, ...context },
    onPage: (page) => hearComplaints(page, complaints),
  });
  return {
    page: shell.page,
    complaints,
    household,
    alter: shell.alter,
    close: async () => {
      await shell.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Notes what a page complains of from here on. */
export function hearComplaints(page: Page, complaints: string[]): void {
  page.setDefaultTimeout(25_000);
  page.on('console', (message) => ['error', 'warning'].includes(message.type()) && complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
}

/** Starts a household from the first start, and goes to its yard. */
export async function startHousehold(page: Page): Promise<void> {
  await page.getByLabel('Name of the household').fill('Ours');
  await page.getByRole('button', { name: 'Start the household' }).click();
  await page.getByRole('heading', { name: 'The yard' }).waitFor();
}

/** Opens the sample from the first start, and goes to its yard, past the look around. */
export async function openSample(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the sample household' }).click();
  await page.getByRole('heading', { name: 'The yard' }).waitFor({ timeout: 50_000 });
  await page.getByRole('button', { name: 'Skip the rest' }).click();
}
