import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { must } from '../../shared-core/result/assert.ts';
import { mustAsk } from './ask-host.ts';
import { chromiumHere, launchChromium } from './launch-chromium.ts';
import { serveHousehold, type ServedHousehold } from './serve-household.ts';
import { startHousehold } from './served-page.ts';
import { SHELL } from './shells/open-shell.ts';

/** A browser holds six connections to one server and makes further questions wait: the streams of many tabs must not take them all. */
describe.skipIf(chromiumHere === null || SHELL !== 'loopback')('the dashboard in many tabs of one browser', { timeout: 90_000 }, () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'many-tabs-'));
  let served: ServedHousehold;
  let browser: Browser;
  let context: BrowserContext;
  const tabs: Page[] = [];
  const tabAt = (at: number) => must(tabs[at], `tab ${at}`);

  /** As a tab goes behind another, and comes before it: without a screen none does so by itself. */
  const setHidden = (tab: Page, hidden: boolean) => tab.evaluate((to) => {
    Object.defineProperty(document, 'hidden', { value: to, configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
  }, hidden);
  const openTab = async () => {
    for (const tab of tabs) await setHidden(tab, true);
    const tab = await context.newPage();
    tabs.push(tab);
    await tab.goto(tabs.length === 1 ? served.link : new URL('/', served.link).href);
    return tab;
  };
  beforeAll(async () => {
    served = await serveHousehold(path.join(folder, 'ours'), '2026-11-25');
    browser = await launchChromium();
    context = await browser.newContext();
  });
  afterAll(async () => {
    await browser.close();
    await served.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  test('each has one stream of what the host tells', async () => {
    const tab = await openTab();
    await startHousehold(tab);
    const asked: string[] = [];
    tab.on('request', (request) => asked.push(new URL(request.url()).pathname));
    await tab.reload();
    await tab.getByRole('heading', { name: 'The yard' }).waitFor();
    expect(asked.filter((name) => name === '/pushes')).toHaveLength(1);
  });

  test('the eighth is answered like the first', async () => {
    while (tabs.length < 8) await (await openTab()).getByRole('heading', { name: 'The yard' }).waitFor({ timeout: 10_000 });
    expect(await mustAsk(tabAt(0), 'household.state', {})).toMatchObject({ household: { name: 'Ours' } });
  });

  test('one that was behind others shows what changed meanwhile when it comes to the front', async () => {
    await mustAsk(tabAt(7), 'car.add', { id: 'pip', name: 'Pip' });
    await tabAt(7).getByText('Pip').first().waitFor();
    await setHidden(tabAt(7), true);
    await setHidden(tabAt(0), false);
    await tabAt(0).getByText('Pip').first().waitFor();
    await mustAsk(tabAt(0), 'car.add', { id: 'wren', name: 'Wren' });
    await tabAt(0).getByText('Wren').first().waitFor();
  });
});
