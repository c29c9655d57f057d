import { existsSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkPackAt } from '../../electron/pack/check-pack.ts';
import { Keyboard } from './keyboard.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openServedPage, type ServedPage } from './served-page.ts';
import { soundAtEverySize } from './sound-at-every-size.ts';


describe.skipIf(chromiumHere === null)('a first hour by the keyboard alone', () => {
  let served: ServedPage;
  let page: Page;
  let keys: Keyboard;

  beforeAll(async () => {
    served = await openServedPage();
    page = served.page;
    keys = new Keyboard(page);
  });
  afterAll(() => served.close());

  const heading = (name: string) => page.getByRole('heading', { name }).first().waitFor();

  test('starts a household', async () => {
    await page.getByRole('heading', { level: 1 }).waitFor();
    await soundAtEverySize(page, 'the first start');
    await keys.fill(/^Name of the household/, 'Ours');
    await keys.press('Start the household');
    await heading('The yard');
    await soundAtEverySize(page, 'the empty yard');
  });

  test('adds a car', async () => {
    await keys.press(/^Add (a|the|your) (first )?car/i);
    await keys.fill(/^Name/, 'Pip');
    await keys.fill(/^First registered/, '2022-11-25');
    await soundAtEverySize(page, 'the form of a car');
    // No set: the item that follows is the only one.
    await keys.to(/^Starting set/);
    await page.keyboard.press('n');
    await keys.press('Add the car');
    await page.getByRole('heading', { name: 'Pip', exact: true }).first().waitFor();
  });

  test('enters three readings', async () => {
    for (const [value, date] of [['9000', '2024-02-01'], ['18100', '2025-02-01'], ['27000', '2026-02-01']] as const) {
      await openCar();
      await keys.press('Enter a reading');
      await keys.fill(/^The odometer shows/, value);
      await keys.fill(/^On/, date);
      if (value === '9000') await soundAtEverySize(page, 'the form of a reading');
      await keys.press('Record the reading');
      await page.getByRole('dialog').waitFor({ state: 'detached' });
    }
    await page.getByText('27\u202f000').first().waitFor();
  });

  test('adds an item, records work on it, and reads when it is next due', async () => {
    await openCar();
    await keys.press('Add an item');
    await keys.fill(/^What is cared for/, 'brake fluid');
    await keys.fill(/^Every so many months/, '24');
    await soundAtEverySize(page, 'the form of an item');
    await keys.press('Add the item');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await keys.press('Record work');
    await keys.to(/^brake fluid/);
    await page.keyboard.press('Space');
    await soundAtEverySize(page, 'the form of work');
    await keys.press('Record the work');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.getByText('by 25 Nov 2028').first().waitFor();
    await soundAtEverySize(page, 'the car');
  });

  test('writes the pack, and it is sound', async () => {
    await keys.press('Write its history pack');
    await soundAtEverySize(page, 'the form of the pack');
    await keys.press('Write the pack');
    await page.getByText('The pack is written').waitFor();
    await soundAtEverySize(page, 'the written pack');
    const [path] = await page.getByText(/pip|history-2026-11-25\.zip/).last().allTextContents();
    expect(path !== undefined && existsSync(path)).toBe(true);
    expect(await checkPackAt(path ?? '')).toMatchObject({ ok: true, value: { faults: [] } });
    await keys.press('Close');
  });

  test('shows the yard with the car in its lane', async () => {
    await keys.press('Yard');
    await heading('The yard');
    await page.getByText('Pip').first().waitFor();
    await soundAtEverySize(page, 'the yard');
  });

  test('kept the focus visible, on the screen and in order all the way, and nothing complained', () => {
    expect(keys.faults).toEqual([]);
    expect(served.complaints).toEqual([]);
  });

  async function openCar(): Promise<void> {
    if (await page.getByRole('heading', { name: 'Service items' }).count() === 0) await keys.press('Car');
    await heading('Service items');
  }
});
