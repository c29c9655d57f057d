import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumHere } from '../launch-chromium.ts';
import { openSamplePage, type SamplePage } from '../sample-page.ts';
import { settled } from './place.ts';

/** Source: WCAG 2.2, 1.4.13 (seen): what is shown on hover or focus can be dismissed, pointed at, and stays. */
describe.skipIf(chromiumHere === null)('the note of a mark on the yard', () => {
  let sample: SamplePage;
  let page: Page;
  beforeAll(async () => {
    sample = await openSamplePage();
    page = sample.page;
    await settled(page);
  });
  afterAll(() => sample.close());

  const mark = () => page.locator('[data-lane=pip] a[data-mark]').first();
  const note = () => page.getByText('Press to open it in Car.');

  test.each(['hover', 'focus'] as const)('shown on %s stays, and goes with Escape while the mark keeps its place', async (way) => {
    await mark()[way]();
    await note().waitFor();
    await page.waitForTimeout(1500);
    expect(await note().count()).toBe(1);
    await page.keyboard.press('Escape');
    await note().waitFor({ state: 'detached' });
    if (way === 'focus') expect(await page.evaluate(() => document.activeElement?.matches('[data-mark]'))).toBe(true);
    await page.mouse.move(2, 2);
    await page.evaluate(() => document.activeElement instanceof HTMLElement && document.activeElement.blur());
  });

  test('can be pointed at, and goes when the pointer has left both', async () => {
    await mark().hover();
    await note().hover();
    await page.waitForTimeout(600);
    expect(await note().count()).toBe(1);
    await page.mouse.move(2, 2);
    await note().waitFor({ state: 'detached' });
    expect(sample.complaints).toEqual([]);
  });
});
