import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CDPSession, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openSamplePage, type SamplePage } from './sample-page.ts';

describe('files of the person’s own, dragged over the page by Chromium itself', () => {
  const folder = mkdtempSync(join(tmpdir(), 'drop-'));
  let sample: SamplePage;
  let page: Page;
  let chromium: CDPSession;
  beforeAll(async () => {
    sample = await openSamplePage();
    page = sample.page;
    chromium = await page.context().newCDPSession(page);
  });
  afterAll(async () => {
    expect(sample.complaints).toEqual([]);
    await sample.close();
    rmSync(folder, { recursive: true });
  });

  const file = (name: string, text = 'date,km\n') => {
    writeFileSync(join(folder, name), text);
    return join(folder, name);
  };
  /** Holds files over a place, looks, and lets go there. */
  async function drop(place: Locator, files: readonly string[], held: () => Promise<void> = () => Promise.resolve()): Promise<void> {
    await place.scrollIntoViewIfNeeded();
    const { x = 0, y = 0, width = 0, height = 0 } = (await place.boundingBox()) ?? {};
    const at = { x: x + width / 2, y: y + height / 2, data: { items: [], files: [...files], dragOperationsMask: 1 } };
    for (const type of ['dragEnter', 'dragOver', 'dragOver'] as const) await chromium.send('Input.dispatchDragEvent', { type, ...at });
    await held();
    await chromium.send('Input.dispatchDragEvent', { type: 'drop', ...at });
  }
  const go = async (address: string, heading: string) => {
    await page.evaluate((to) => {
      history.pushState(null, '', to);
      dispatchEvent(new PopStateEvent('popstate'));
    }, address);
    await page.getByRole('heading', { name: heading }).first().waitFor();
  };

  test('beside a place that takes them do nothing, and what was typed stays', async () => {
    await go('/parts/prices', 'The list');
    await page.getByRole('textbox').first().fill('typed and not kept');
    const [address, pages] = [page.url(), page.context().pages().length];
    for (const place of [page.getByRole('heading', { level: 1 }), page.getByRole('navigation').first(), page.getByRole('textbox').first()]) await drop(place, [file('stray.txt')]);
    await page.waitForTimeout(500);
    expect([page.url(), page.context().pages().length]).toEqual([address, pages]);
    expect(await page.getByRole('textbox').first().inputValue()).toBe('typed and not kept');
  });

  test('a list of prices is read where it is dropped, and the place says so while it is held', async () => {
    await go('/parts/prices', 'The list');
    const place = page.getByText('Or drop it here.');
    await place.waitFor();
    await drop(place, [file('prices.csv', 'part,pack,price\nOil,5,34.99\n')], () => page.getByText('Let go to choose it.').waitFor());
    await page.getByRole('heading', { name: 'How it is read' }).waitFor();
  });

  test('a pack is taken one at a time', async () => {
    await go('/handover/check', 'A pack that somebody gave you');
    const place = page.getByText('Or drop it here.');
    await drop(place, [file('a.zip'), file('b.zip')]);
    await page.getByRole('alert').filter({ hasText: 'Only one file goes here. Drop one.' }).waitFor();
    await drop(place, [file('a.zip')]);
    await page.getByText('a.zip', { exact: true }).waitFor();
    expect(await page.getByRole('alert').filter({ hasText: 'Only one file' }).count()).toBe(0);
  });

  test('a paper of a reading, and papers of a record beside those chosen before', async () => {
    await sample.goTo('Pip', 'Distance and use');
    await page.getByRole('button', { name: 'Enter a reading' }).first().click();
    const sheet = page.getByRole('dialog');
    await drop(sheet.getByText('Or drop it here.'), [file('receipt.pdf')]);
    await sheet.getByText('receipt.pdf').waitFor();
    await page.keyboard.press('Escape');
    await sample.goTo('Pip', 'Care');
    await page.getByRole('button', { name: /^Record work/ }).first().click();
    const papers = page.getByText('Or drop them here.');
    await drop(papers, [file('one.pdf'), file('two.pdf')]);
    await drop(papers, [file('three.png')]);
    await page.getByText('one.pdf, two.pdf, three.png').waitFor();
  });

  test('papers anywhere on their screen', async () => {
    await go('/papers', 'Papers');
    await drop(page.getByRole('heading', { name: 'Papers', level: 1 }), [file('note.txt', 'an invented note')]);
    await page.getByRole('status').filter({ hasText: '1 paper is kept.' }).waitFor();
  });
});
