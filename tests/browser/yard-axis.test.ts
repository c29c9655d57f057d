import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeFaults } from './axe-faults.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

/** The calendar of the yard by wheel, keys and buttons, and a reading into any lane. */
describe.skipIf(chromiumHere === null)('the calendar of the yard', () => {
  let sample: SamplePage;
  let page: Page;

  beforeAll(async () => {
    sample = await openSamplePage();
    page = sample.page;
  });
  afterAll(() => sample.close());

  const monthsSeen = () => page.getByTitle('The wheel goes nearer').locator('span').allTextContents();
  const isSpan = (name: string) => expect.poll(() => page.getByRole('radio', { name, exact: true }).isChecked()).toBe(true);
  const seesToday = (seen: boolean) => expect.poll(async () => (await monthsSeen()).includes('today')).toBe(seen);
  const overMonths = async () => {
    const box = await page.getByTitle('The wheel goes nearer').boundingBox();
    await page.mouse.move((box?.x ?? 0) + (box?.width ?? 0) * 0.7, (box?.y ?? 0) + 20);
  };

  test('goes from a year to a month and to three years by keys from anywhere on the screen', async () => {
    await isSpan('1 year');
    for (let n = 0; n < 6; n += 1) await page.keyboard.press('-');
    await isSpan('1 month');
    await expect.poll(monthsSeen).toEqual(expect.arrayContaining(['today', '7', '14', '21']));
    for (let n = 0; n < 9; n += 1) await page.keyboard.press('+');
    await isSpan('3 years');
    await page.keyboard.press('+');
    await isSpan('3 years');
  });

  test('by buttons, and one that can do nothing more keeps the focus', async () => {
    const nearer = page.getByRole('button', { name: 'Nearer: a shorter span' });
    for (let n = 0; n < 9; n += 1) await nearer.click();
    await isSpan('1 month');
    await expect.poll(() => nearer.getAttribute('aria-disabled')).toBe('true');
    await expect.poll(() => nearer.evaluate((one) => one === document.activeElement)).toBe(true);
    await page.getByRole('button', { name: 'Wider: a longer span' }).click();
    await page.getByText('1 year', { exact: true }).click();
    await isSpan('1 year');
  });

  test('moves ahead by key, button and wheel, and today is found again by key and button', async () => {
    // An arrow on the spans themselves chooses among them.
    await page.getByRole('heading', { name: 'The yard' }).focus();
    await page.keyboard.press('Shift+ArrowRight');
    await seesToday(false);
    await page.keyboard.press('t');
    await seesToday(true);
    await page.getByRole('button', { name: 'Further ahead' }).click();
    await seesToday(false);
    expect(await axeFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Today', exact: true }).click();
    await seesToday(true);
    await overMonths();
    await page.mouse.wheel(600, 0);
    await seesToday(false);
    await page.keyboard.press('T');
    await seesToday(true);
  });

  test('the wheel over the months goes nearer and wider, and over the lanes it scrolls the page', async () => {
    await overMonths();
    await page.mouse.wheel(0, 120);
    await page.mouse.wheel(0, 120);
    await expect.poll(() => page.getByRole('radio', { name: '1 year' }).isChecked()).toBe(false);
    const scrolled = () => page.evaluate(() => scrollY);
    expect(await scrolled()).toBe(0);
    await page.mouse.wheel(0, -120);
    await page.mouse.wheel(0, -120);
    await isSpan('1 year');
    await page.keyboard.press('t');
    const lane = await page.locator('[data-lane]').first().boundingBox();
    await page.mouse.move((lane?.x ?? 0) + 400, (lane?.y ?? 0) + 10);
    await page.mouse.wheel(0, 200);
    await expect.poll(scrolled).toBeGreaterThan(0);
    await isSpan('1 year');
    await page.evaluate(() => scrollTo(0, 0));
  });

  test('a mark that leaves the paper hands the focus on within its lane', async () => {
    const lane = page.locator('[data-lane]').filter({ has: page.getByRole('heading', { name: 'Pip', exact: true }) });
    await lane.locator('[data-mark]').first().focus();
    await page.keyboard.press('Shift+ArrowRight');
    await seesToday(false);
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest('[data-lane]')?.querySelector('h2')?.textContent)).toBe('Pip');
    await page.keyboard.press('t');
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest('[data-lane]')?.querySelector('h2')?.textContent)).toBe('Pip');
  });

  test('it stays as it was left while one is elsewhere', async () => {
    await page.getByText('6 months', { exact: true }).click();
    await page.getByRole('link', { name: 'Papers', exact: true }).click();
    await page.getByRole('heading', { name: 'Papers', level: 1 }).waitFor();
    await page.getByRole('link', { name: 'Yard', exact: true }).click();
    await isSpan('6 months');
    await page.getByText('1 year', { exact: true }).click();
  });

  test('a reading goes into any lane with two keys before its figures', async () => {
    await page.getByRole('heading', { name: 'The yard' }).focus();
    const names = await page.locator('[data-lane] h2 a').allTextContents();
    for (const [at, car] of names.entries()) {
      await page.keyboard.press('r');
      await page.getByRole('status').filter({ hasText: 'A reading: press the letter of its car.' }).waitFor();
      if (at === 0) expect(await axeFaults(page)).toEqual([]);
      await page.keyboard.press('abcdefgh'.charAt(at));
      await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toContain(`Odometer of ${car} today`);
      await page.keyboard.press('Escape');
      // The focus goes back to the lane's button in the next frame.
      await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Reading');
      await page.getByRole('heading', { name: 'The yard' }).focus();
    }
  });

  test('the letters leave with Escape, and a letter that is no lane’s opens nothing', async () => {
    await page.keyboard.press('r');
    await page.keyboard.press('z');
    await expect.poll(() => page.locator('[data-lane] kbd').count()).toBe(0);
    await page.keyboard.press('r');
    await expect.poll(() => page.locator('[data-lane] kbd').count()).toBe(5);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('[data-lane] kbd').count()).toBe(0);
    await expect.poll(() => page.getByLabel(/^Odometer of/).count()).toBe(0);
  });

  test('nothing complained', () => expect(sample.complaints).toEqual([]));
});
