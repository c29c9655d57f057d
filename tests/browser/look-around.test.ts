import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeFaults } from './axe-faults.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openServedPage, type ServedPage } from './served-page.ts';

/** The first minutes: the sample is one press away and can be stopped; a short look around follows, and is left at any time. */
describe.skipIf(chromiumHere === null)('a look around', () => {
  let served: ServedPage;
  let page: Page;

  beforeAll(async () => {
    served = await openServedPage();
    page = served.page;
    await page.getByRole('heading', { level: 1 }).waitFor();
  });
  afterAll(() => served.close());

  const focused = () => page.evaluate(() => document.activeElement?.textContent ?? '');
  const ringed = () => page.locator('[data-toured]').count();
  const card = (title: string) => page.getByRole('region', { name: title });

  test('the sample tells how far it is, and stopped it leaves nothing and can be opened again', async () => {
    await page.getByRole('button', { name: 'Open the sample household' }).click();
    await page.getByText(/^\d+ of \d+ entries$/).waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    await page.getByRole('alert').filter({ hasText: 'nothing of it is left' }).waitFor();
    await expect.poll(focused).toBe('Open the sample household');
  });

  test('opened, five steps say what is where, and each rings what it speaks of', async () => {
    await page.keyboard.press('Enter');
    await card('All cars on one calendar').waitFor({ timeout: 50_000 });
    for (const title of ['All cars on one calendar', 'What falls due', 'A reading now and then', 'Work done together', 'The other screens']) {
      await card(title).waitFor();
      await expect.poll(ringed).toBe(1);
      expect(await axeFaults(page)).toEqual([]);
      await page.keyboard.press('Enter');
    }
    await expect.poll(focused).toBe('The yard');
    await expect.poll(ringed).toBe(0);
  });

  test('it comes again from the line of the sample and from Settings; it is left by a press, by Escape, and by going elsewhere', async () => {
    await page.getByRole('button', { name: 'Look around in five steps' }).click();
    await page.getByRole('button', { name: 'Next' }).click();
    await page.getByRole('button', { name: 'Back', exact: true }).click();
    await page.getByRole('button', { name: 'Skip the rest' }).click();
    await expect.poll(ringed).toBe(0);
    await page.getByRole('link', { name: 'Settings', exact: true }).click();
    await page.getByRole('main').getByRole('button', { name: 'Look around in five steps' }).click();
    await card('All cars on one calendar').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => card('All cars on one calendar').count()).toBe(0);
    await page.getByRole('button', { name: 'Look around in five steps' }).click();
    await page.getByRole('link', { name: 'Ledger', exact: true }).click();
    await page.getByRole('heading', { name: 'Ledger', level: 1 }).waitFor();
    await expect.poll(ringed).toBe(0);
    await page.getByRole('link', { name: 'Yard', exact: true }).click();
    await page.getByRole('heading', { name: 'The yard' }).waitFor();
    await expect.poll(() => card('All cars on one calendar').count()).toBe(0);
  });

  test('the sample is gone with one press, and the first start is back', async () => {
    await page.getByRole('button', { name: 'Leave the sample' }).click();
    await page.getByRole('heading', { name: 'Welcome to Trunnion' }).waitFor();
  });

  test('nothing complained', () => expect(served.complaints).toEqual([]));
});
