import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { OperationName, ReplyOf, RequestOf } from '../../shared-core/contract/contract.ts';
import type { Result } from '../../shared-core/result/result.ts';
import { axeFaults } from './axe-faults.ts';
import { launchChromium } from './launch-chromium.ts';
import { serveHousehold } from './serve-household.ts';

/** Widths in CSS pixels: a small screen, a large one, and the small one at 200 %. */
const SIZES = [[1280, 800], [1920, 1080], [640, 400]] as const;

/** The sample household in a real Chromium, served by the real command. */
export interface SamplePage {
  readonly page: Page;
  /** What the page complained of; to be empty at the end. */
  readonly complaints: readonly string[];
  /** Asks the host as the page does; a refusal fails the test. */
  must<Name extends OperationName>(name: Name, request: RequestOf<Name>): Promise<ReplyOf<Name>>;
  /** Goes to a leaf of a car by pressing what leads there. */
  goTo(car: string, leaf: string): Promise<void>;
  /** No violation at any size. */
  axeAtEverySize(where: string): Promise<void>;
  close(): Promise<void>;
}

/** Serves a fresh household on a fixed day and opens its sample. */
export async function openSamplePage(): Promise<SamplePage> {
  const folder = mkdtempSync(join(tmpdir(), 'sample-page-'));
  const served = await serveHousehold(join(folder, 'household'), '2026-11-25');
  const browser = await launchChromium();
  const page = await (await browser.newContext({ locale: 'en-GB', viewport: { width: 1280, height: 800 } })).newPage();
  page.setDefaultTimeout(25_000);
  const complaints: string[] = [];
  page.on('console', (message) => ['error', 'warning'].includes(message.type()) && complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(served.link);
  await page.getByRole('button', { name: 'Open the sample household' }).click();
  await page.getByRole('heading', { name: 'The yard' }).waitFor({ timeout: 50_000 });
  return {
    page,
    complaints,
    must: async (name, request) => {
      const result = await page.evaluate(async ([operation, body]) => {
        const reply = await fetch(`/operations/${operation}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body });
        return (await reply.json()) as Result<unknown>;
      }, [name, JSON.stringify(request)] as const);
      if (!result.ok) throw new Error(`refused ${name}: ${JSON.stringify(result.refusal)}`);
      return result.value as never;
    },
    goTo: async (car, leaf) => {
      await page.getByRole('navigation').getByRole('link', { name: 'Car', exact: true }).click();
      await page.getByRole('link', { name: car, exact: true }).click();
      await page.getByRole('heading', { name: car, level: 1 }).waitFor();
      await page.getByRole('link', { name: leaf, exact: true }).click();
      await page.locator('a[aria-current=page]', { hasText: leaf }).waitFor();
    },
    axeAtEverySize: async (where) => {
      for (const [width, height] of SIZES) {
        await page.setViewportSize({ width, height });
        await page.waitForFunction(() => document.getAnimations().every((one) => one.playState !== 'running'));
        expect(await axeFaults(page), `${where} at ${width} x ${height}`).toEqual([]);
      }
      await page.setViewportSize({ width: 1280, height: 800 });
    },
    close: async () => {
      await browser.close();
      await served.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
