import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { setup } from '../build-page.ts';
import { launchChromium } from '../browser/launch-chromium.ts';
import { serveHousehold } from '../browser/serve-household.ts';
import { LARGE_DAY, writeLargeHousehold } from './large-household.ts';
import { referenceMilliseconds } from './reference.ts';
import { ACTS } from './screen-acts.ts';
import { watchPage, type Watched } from './watch-page.ts';

/**
 * How the screens feel with fifteen cars and twenty years: `npm run bench`. Presses, types and turns the wheel through every screen in a real Chromium,
 * and prints the longest time from an event to the paint after it (Event Timing, W3C), and the greatest layout shift (Layout Instability, W3C), in
 * milliseconds and as parts of the reference of the same run. What passes the bounds of the design is named; the times themselves judge nothing.
 */
const MOST_MILLISECONDS = 100;
const MOST_SHIFT = 0.01;
const reference = referenceMilliseconds();
const folder = mkdtempSync(path.join(os.tmpdir(), 'bench-screens-'));

try {
  await setup();
  const household = path.join(folder, 'household');
  await writeLargeHousehold(household);
  const served = await serveHousehold(household, LARGE_DAY);
  const browser = await launchChromium();
  const page = await (await browser.newContext({ locale: 'en-GB', viewport: { width: 1280, height: 800 } })).newPage();
  const watched = await watchPage(page);
  await page.goto(served.link);
  await useEverything(page, watched);
  await browser.close();
  await served.stop();
} finally {
  rmSync(folder, { recursive: true });
}

async function useEverything(page: Page, watched: Watched): Promise<void> {
  console.log(`the reference: ${reference.toFixed(0)} ms of the processor`);
  await page.locator('[data-lane]').nth(14).waitFor({ timeout: 60_000 });
  for (const [name, act] of ACTS) {
    await act(page);
    await page.waitForTimeout(400);
    const { longest, on, shift, moved } = await watched.since();
    const beyond = [...(longest >= MOST_MILLISECONDS ? [`OVER ${MOST_MILLISECONDS} ms`] : []), ...(shift > MOST_SHIFT ? [`OVER ${MOST_SHIFT}: ${moved}`] : [])];
    console.log(`${name.padEnd(44)} ${longest.toFixed(0).padStart(5)} ms (${(longest / reference).toFixed(2)} of the reference) on ${on.padEnd(12)} shift ${shift.toFixed(4)}  ${beyond.join(', ')}`);
  }
}
