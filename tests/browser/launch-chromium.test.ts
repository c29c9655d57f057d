import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Browser } from 'playwright-core';
import { axeFaults } from './axe-faults.ts';
import { findChromium } from './find-chromium.ts';
import { chromiumHere, launchChromium } from './launch-chromium.ts';

const onLinuxX64 = process.platform === 'linux' && process.arch === 'x64';
const GOOD = '<!doctype html><html lang="en"><title>A</title><main><h1>A</h1><button>Go</button><label>On <input type="date"></label></main></html>';
const BAD = '<!doctype html><html><title>A</title><main><h1>A</h1><button></button></main></html>';

let browser: Browser | null = null;
afterEach(async () => {
  vi.unstubAllEnvs();
  await browser?.close();
  browser = null;
});

describe.skipIf(chromiumHere === null)('the Chromium of the browser tests', () => {
  test('runs a page', async () => {
    browser = await launchChromium();
    const page = await browser.newPage();
    await page.setContent(GOOD);
    expect(await page.evaluate(() => document.querySelector('button')?.textContent)).toBe('Go');
  });

  test('axe finds nothing on a good page and names what is wrong on a bad one', async () => {
    browser = await launchChromium();
    const page = await (await browser.newContext()).newPage();
    await page.setContent(GOOD);
    expect(await axeFaults(page)).toEqual([]);
    await page.setContent(BAD);
    expect((await axeFaults(page)).map((fault) => fault.split(' ')[0]).sort()).toEqual(['button-name', 'html-has-lang']);
  });
});

describe.runIf(onLinuxX64)('the packaged Chromium', () => {
  test('runs with its own libraries', async () => {
    vi.stubEnv('TEST_CHROMIUM', 'package');
    const found = await findChromium();
    expect(found).toMatchObject({ from: 'package', env: { LD_LIBRARY_PATH: expect.stringContaining('al2023/lib') as string } });
    browser = await launchChromium(found);
    const page = await browser.newPage();
    await page.setContent(GOOD);
    expect(await page.evaluate(() => navigator.userAgent)).toContain('HeadlessChrome');
    expect(await page.evaluate(() => document.body.offsetHeight > 0)).toBe(true);
  });
});
