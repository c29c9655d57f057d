import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { axeFaults } from './axe-faults.ts';
import { SHELL } from './shells/open-shell.ts';

/** In CSS pixels: a small screen, a large one, and the small one at 200 %. */
const SIZES = [[1280, 800], [1920, 1080], [640, 400]] as const;
/** The page is the same in each shell: elsewhere than on loopback it is measured at the first size. */
const MEASURED = SHELL === 'loopback' ? SIZES : SIZES.slice(0, 1);

/** At each size axe finds no fault, and nothing has to be moved sideways. */
export async function soundAtEverySize(page: Page, where: string): Promise<void> {
  for (const [width, height] of MEASURED) {
    await page.setViewportSize({ width, height });
    // Axe measures the colours of what it sees: what moves has come to rest.
    await page.waitForFunction(() => document.getAnimations().every((one) => one.playState !== 'running'));
    expect(await axeFaults(page), `${where} at ${width} x ${height}`).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), `${where} at ${width}: nothing sideways`).toBeLessThanOrEqual(0);
  }
  await page.setViewportSize({ width: 1280, height: 800 });
}
