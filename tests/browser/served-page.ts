import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { launchChromium } from './launch-chromium.ts';
import { serveHousehold } from './serve-household.ts';

/** A household in a real Chromium, served by the real command. */
export interface ServedPage {
  readonly page: Page;
  /** What the page complained of; to be empty at the end. */
  readonly complaints: readonly string[];
  /** The household's folder. */
  readonly household: string;
  close(): Promise<void>;
}

interface ServedPageOptions {
  readonly context?: BrowserContextOptions;
  /** Fills the household before it is served; without it the page shows a first start. */
  readonly fill?: (household: string) => Promise<void>;
}

/** Serves a fresh household on 25 November 2026, and opens it. */
export async function openServedPage({ context, fill }: ServedPageOptions = {}): Promise<ServedPage> {
  const folder = mkdtempSync(join(tmpdir(), 'served-page-'));
  const household = join(folder, 'household');
  await fill?.(household);
  const served = await serveHousehold(household, '2026-11-25');
  const browser = await launchChromium();
  const page = await (await browser.newContext({ locale: 'en-GB', viewport: { width: 1280, height: 800 }, ...context })).newPage();
  page.setDefaultTimeout(25_000);
  const complaints: string[] = [];
  page.on('console', (message) => ['error', 'warning'].includes(message.type()) && complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(served.link);
  return {
    page,
    complaints,
    household,
    close: async () => {
      await browser.close();
      await served.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Starts a household from the first start, and goes to its yard. */
export async function startHousehold(page: Page): Promise<void> {
  await page.getByLabel('Name of the household').fill('Ours');
  await page.getByRole('button', { name: 'Start the household' }).click();
  await page.getByRole('heading', { name: 'The yard' }).waitFor();
}

/** Opens the sample from the first start, and goes to its yard. */
export async function openSample(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the sample household' }).click();
  await page.getByRole('heading', { name: 'The yard' }).waitFor({ timeout: 50_000 });
}
