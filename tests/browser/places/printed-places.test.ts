import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { PDFiumLibrary } from '@hyzyla/pdfium';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumHere } from '../launch-chromium.ts';
import { printedPages, printedText } from '../printed-page.ts';
import { openSamplePage, type SamplePage } from '../sample-page.ts';
import { SHELL } from '../shells/open-shell.ts';
import { visit } from './place.ts';

/** What one would print, though it has no sheet of its own for it. */
const PRINTED = ['/', '/car/pip', '/car/pip/services', '/car/pip/distance', '/car/pip/wear', '/sessions', '/parts', '/parts/shelf', '/parts/offers', '/papers', '/handover/leave/pip', '/ledger', '/ledger/ahead', '/ledger/wishes', '/car/pip/record/pip-tyres-3'];

/** What can only be pressed, unless something else says the same; and a word of each row, without what is pressed in it. */
function saidOnScreen(): { readonly pressed: readonly string[]; readonly rows: readonly string[] } {
  const PRESSED = 'nav, button:not([data-mark], th *), summary';
  const textOf = (one: Element) => {
    const copy = one.cloneNode(true) as Element;
    for (const part of copy.querySelectorAll(PRESSED)) part.remove();
    return [...copy.querySelectorAll('*')].filter((part) => part.children.length === 0).map((part) => part.textContent ?? '').join(' ');
  };
  const words = textOf(document.body);
  const rows = [...document.querySelectorAll('main tbody tr, main ul > li')].filter((one) => one.checkVisibility() && one.closest(PRESSED) === null);
  return {
    pressed: [...document.querySelectorAll('nav a, main button:not([data-mark], th *)')].map((one) => one.textContent?.trim() ?? '').filter((text) => text.length > 3 && !words.includes(text)),
    rows: rows.map((one) => /[\p{L}\d]{4,}/u.exec(textOf(one))?.[0] ?? ''),
  };
}

/** Source for all: our own rule. Dark is the theme that a print must not keep. */
describe.skipIf(chromiumHere === null || SHELL !== 'loopback')('printed, a screen', { timeout: 240_000 }, () => {
  let sample: SamplePage;
  let page: Page;
  beforeAll(async () => {
    sample = await openSamplePage();
    page = sample.page;
    await sample.must('look.set', { look: 'dark' });
    await page.waitForFunction(() => document.documentElement.dataset['mantineColorScheme'] === 'dark');
  });
  afterAll(() => sample.close());

  test.each(PRINTED)('%s says all that it says, and nothing that can only be pressed', async (address) => {
    await visit(page, { name: '', address });
    const { pressed, rows } = await page.evaluate(saidOnScreen);
    for (const format of ['A4', 'Letter'] as const) {
      const pages = await printedPages(page, format);
      const text = pages.map(printedText).join(' ');
      for (const { width, pieces } of pages) expect(pieces.filter((piece) => piece.x < 0 || piece.x + piece.width > width), `${format}: over the edge`).toEqual([]);
      const alone = new Set(pages.flatMap(({ pieces }) => pieces.map((piece) => piece.text.trim())));
      expect(pressed.filter((one) => alone.has(one)), `${format}: pressed only`).toEqual([]);
      expect(rows.filter((one) => !text.replaceAll(' ', '').includes(one)), `${format}: rows that are missing`).toEqual([]);
    }
    expect(sample.complaints).toEqual([]);
  });

  test('stands on white paper, though the screen is dark', async () => {
    await visit(page, { name: '', address: '/car/pip' });
    const library = await PDFiumLibrary.init();
    const document = await library.loadDocument(new Uint8Array(await page.pdf({ format: 'A4', printBackground: true })));
    const picture = await document.getPage(0).render({ scale: 0.5, render: async ({ data, width, height }) => new Uint8Array(await sharp(data, { raw: { width, height, channels: 4 } }).png().toBuffer()) });
    const { channels, data, info } = await sharp(picture.data).greyscale().raw().toBuffer({ resolveWithObject: true }).then(({ data: bytes, info: about }) => ({ channels: about.channels, data: bytes, info: about }));
    const light = data.filter((_, at) => at % channels === 0).filter((shade) => shade > 250).length;
    expect(light / (info.width * info.height)).toBeGreaterThan(0.8);
    document.destroy();
    library.destroy();
  });
});
