import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

/** How many colours a line across a picture meets, at a share of its height: letters have edges, an empty patch has none. */
async function coloursAlong(picture: Buffer, height: number): Promise<number> {
  const { data, info } = await sharp(picture).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const row = Math.floor(info.height * height) * info.width * info.channels;
  return new Set(Array.from({ length: info.width - 20 }, (_, at) => data.subarray(row + (at + 10) * info.channels, row + (at + 11) * info.channels).toString('hex'))).size;
}

/** The look, chosen and followed; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('the look', () => {
  let sample: SamplePage;
  let page: Page;
  beforeAll(async () => {
    sample = await openSamplePage();
    page = sample.page;
  });
  afterAll(() => sample.close());

  const worn = () => page.evaluate(() => `${document.documentElement.dataset['mantineColorScheme'] ?? ''} ${document.documentElement.dataset['contrast'] ?? ''}`);
  const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);

  test('follows the computer: light or dark, with the usual contrast or more', async () => {
    for (const colorScheme of ['dark', 'light'] as const) {
      for (const contrast of ['more', 'no-preference'] as const) {
        await page.emulateMedia({ colorScheme, contrast });
        await expect.poll(worn).toBe(`${colorScheme} ${contrast === 'more' ? 'more' : 'usual'}`);
      }
    }
    expect(await paper()).toBe('rgb(245, 240, 230)');
  });

  test.each(['light', 'dark'] as const)('in a person’s own colours, %s, words on a ground and what is chosen are to be seen', async (colorScheme) => {
    await page.emulateMedia({ colorScheme, forcedColors: 'active' });
    await expect.poll(worn).toBe(`${colorScheme} usual`);
    for (const [shown, height] of [[page.getByText('Propose sessions', { exact: true }), 0.5], [page.locator('nav a[aria-current=page]'), 0.75], [page.locator('.mantine-SegmentedControl-label[data-active]').first(), 0.5], [page.locator('[data-lane=pip] a[data-mark]').first(), 0.5]] as const) {
      expect(await coloursAlong(await shown.screenshot(), height), await shown.textContent() ?? '').toBeGreaterThan(2);
    }
    await page.emulateMedia({ colorScheme: 'light', forcedColors: 'none' });
  });

  test('is chosen in Settings by the keyboard, and then no longer asks the computer', async () => {
    await page.getByRole('navigation').getByRole('link', { name: 'Settings' }).click();
    await page.getByRole('radio', { name: 'As the computer asks' }).focus();
    for (const [name, look] of [['Light', 'light usual'], ['Dark', 'dark usual'], ['High contrast, light', 'light more'], ['High contrast, dark', 'dark more']] as const) {
      await page.keyboard.press('ArrowDown');
      await expect.poll(worn, { message: name }).toBe(look);
      await expect.poll(() => page.getByRole('radio', { name, exact: true }).isChecked()).toBe(true);
    }
    await expect.poll(paper).toBe('rgb(0, 0, 0)');
    await page.emulateMedia({ colorScheme: 'light', contrast: 'no-preference' });
    expect(await worn()).toBe('dark more');
  });

  test('stands when the page is opened anew', async () => {
    await page.reload();
    await page.getByRole('heading', { level: 1 }).waitFor();
    await expect.poll(worn).toBe('dark more');
    await sample.must('look.set', { look: 'system' });
    await expect.poll(worn).toBe('light usual');
    expect(sample.complaints).toEqual([]);
  });
});
