import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeFaults } from './axe-faults.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openServedPage, type ServedPage } from './served-page.ts';

const THIN = '\u202f';

/** The sample household, as one looks around in it; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('the yard and a car of the sample', () => {
  let served: ServedPage;
  let page: Page;

  beforeAll(async () => {
    served = await openServedPage({ context: { viewport: { width: 1440, height: 900 }, colorScheme: 'dark' } });
    page = served.page;
  });
  afterAll(() => served.close());

  const focused = () => page.evaluate(() => document.activeElement?.textContent ?? '');
  const lane = (car: string) => page.locator('[data-lane]').filter({ has: page.getByRole('heading', { name: car, exact: true }) });
  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).waitFor();

  test('the sample opens with one press and says that it proves nothing', async () => {
    await page.getByRole('button', { name: 'Open the sample household' }).click();
    await page.getByRole('heading', { name: 'The yard' }).waitFor({ timeout: 50_000 });
    await page.getByText('Sample household, proves nothing.').waitFor();
    await expect.poll(focused).toBe('Next');
    await page.keyboard.press('Escape');
    await expect.poll(focused).toBe('The yard');
    await expect.poll(() => page.locator('[data-lane]:not([data-lane=""])').count()).toBe(5);
    await expect.poll(() => lane('Pip').getByRole('link', { name: /^brake fluid, 12 months late/ }).count()).toBe(1);
  });

  test('nothing in a lane touches or hangs over another', async () => {
    for (const span of ['1 month', '3 months', '6 months', '1 year', '3 years']) {
      await page.getByText(span, { exact: true }).click();
      await page.getByRole('button', { name: 'Unfold all lanes' }).click();
      await expect.poll(() => page.locator('[data-lane] button[aria-expanded=true]').count()).toBe(5);
      const overlaps = await page.evaluate(() => {
        const lanes = [...document.querySelectorAll('[data-lane]')];
        const boxes = lanes.map((one) => [...one.querySelectorAll('[data-mark]')].map((mark) => mark.getBoundingClientRect()));
        return boxes.flatMap((marks) => marks.flatMap((a, at) => marks.slice(at + 1).filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)));
      });
      expect(overlaps, span).toEqual([]);
      await page.getByRole('button', { name: 'Fold all lanes' }).click();
    }
    await page.getByText('1 year', { exact: true }).click();
  });

  test('the arrow keys go from mark to mark and lane to lane, and the note tells everything', async () => {
    await lane('Pip').locator('[data-mark]').first().focus();
    const before = await focused();
    await page.keyboard.press('ArrowRight');
    await expect.poll(focused).not.toBe(before);
    await page.keyboard.press('Home');
    await expect.poll(focused).toBe(before);
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest('[data-lane]')?.querySelector('h2')?.textContent)).toBe('Heron');
    await page.getByText('Press to open it in Car.').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => page.getByText('Press to open it in Car.').count()).toBe(0);
    await expect.poll(() => page.evaluate(() => document.activeElement?.matches('[data-mark]'))).toBe(true);
    await page.keyboard.press('-');
    await page.keyboard.press('-');
    await expect.poll(() => page.getByRole('radio', { name: '6 months' }).isChecked()).toBe(true);
    await page.keyboard.press('+');
    await page.keyboard.press('+');
    await expect.poll(() => page.getByRole('radio', { name: '1 year' }).isChecked()).toBe(true);
  });

  test('a reading is typed into a lane: R, the figures, Enter; and it is undone', async () => {
    await lane('Pip').locator('[data-mark]').first().focus();
    await page.keyboard.press('r');
    await page.getByLabel(/^Odometer of Pip/).waitFor();
    await page.keyboard.type('34 300');
    await page.keyboard.press('Enter');
    await said(`Pip: 34${THIN}300 mi recorded.`);
    await lane('Pip').getByText(/last read 25 Nov/).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await said('Undone.');
    await lane('Pip').getByText(/last read 12 Nov/).waitFor();
  });

  test('one that cannot be is set aside, asked about on the spot, and answered with one press', async () => {
    await page.getByRole('button', { name: 'Enter a reading for Pip (key R)' }).press('Enter');
    await page.keyboard.type('3425');
    await page.keyboard.press('Enter');
    await page.getByText('Set aside and moves no forecast').waitFor();
    await expect.poll(focused).toContain('It was');
    expect(await axeFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect.poll(focused).toBe('Reading');
    const list = page.getByRole('region', { name: 'What waiting costs' });
    await list.getByRole('group', { name: /3425 mi on 25 Nov 2026: It is lower/ }).getByRole('button', { name: /^It was/ }).first().click();
    await said(/Pip: 34.\d{3} mi recorded instead\./);
    await list.getByText('3425 mi').waitFor({ state: 'detached' });
  });

  test('what is no number is refused where it was typed, and stays', async () => {
    await page.getByRole('button', { name: 'Enter a reading for Wren (key R)' }).click();
    await page.keyboard.type('half');
    await page.keyboard.press('Enter');
    await lane('Wren').getByText('Write a number, such as 38250.').waitFor();
    await expect.poll(() => page.getByLabel(/^Odometer of Wren/).inputValue()).toBe('half');
    await page.keyboard.press('Escape');
  });

  // The sessions that stand are marks of the band, and rows of a table of their own: two rows of headings.
  test('every mark is in the table too', async () => {
    await page.getByRole('button', { name: 'Unfold all lanes' }).click();
    // The press is seen at once, and the lanes follow.
    await expect.poll(() => page.locator('[data-lane] button[aria-expanded=true]').count()).toBe(5);
    const inLanes = await page.locator('[data-mark]').count();
    const counts = await page.locator('[data-lane]').evaluateAll((lanes) => lanes.flatMap((one) => [...one.textContent.matchAll(/(\d+) (?:later|not known)/g)].map((match) => Number(match[1]))));
    await page.getByText('Table', { exact: true }).click();
    await expect.poll(() => page.getByRole('row').count()).toBe(2 + inLanes + counts.reduce((sum, count) => sum + count, 0));
    expect(await axeFaults(page)).toEqual([]);
    await page.getByText('Lanes', { exact: true }).click();
  });

  test('a mark leads to its item in the Car screen', async () => {
    await lane('Pip').getByRole('link', { name: /^brake fluid, 12 months late/ }).click();
    await page.getByRole('heading', { name: 'Pip', level: 1 }).waitFor();
    await expect.poll(focused).toContain('was due by 25 Nov 2025');
    expect(await axeFaults(page)).toEqual([]);
  });

  test('a refused form keeps what was typed, points at the field, and goes on when it is opened again', async () => {
    await page.getByRole('button', { name: 'Record work on brake fluid' }).click();
    await page.getByRole('textbox', { name: 'Done on' }).fill('31/2/2026');
    await page.getByRole('button', { name: 'Record the work' }).click();
    await page.getByRole('alert').filter({ hasText: 'Not recorded. Write a whole date' }).waitFor();
    await expect.poll(() => page.getByRole('textbox', { name: 'Done on' }).evaluate((field) => field === document.activeElement)).toBe(true);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Record work on brake fluid');
    await page.getByRole('button', { name: 'Record work on brake fluid' }).click();
    await expect.poll(() => page.getByRole('textbox', { name: 'Done on' }).inputValue()).toBe('31/2/2026');
    await page.getByRole('button', { name: 'Start over' }).click();
    await expect.poll(() => page.getByRole('textbox', { name: 'Done on' }).inputValue()).toBe('25 Nov 2026');
  });

  test('what is refused of a group goes to a field in it, in the order of the names', async () => {
    const brakes = page.getByRole('dialog').getByRole('checkbox', { name: 'brake fluid', exact: true });
    await brakes.uncheck();
    await page.getByRole('button', { name: 'Record the work' }).click();
    await page.getByRole('alert').filter({ hasText: 'Not recorded.' }).waitFor();
    await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement).labels?.[0]?.textContent)).toBe('air filter');
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest('fieldset')?.getAttribute('data-fault'))).toBe('true');
    await brakes.check();
  });

  test('work is recorded with a paper, moves the item on, and all of it is undone at once', async () => {
    await page.locator('input[type=file]').setInputFiles({ name: 'receipt.png', mimeType: 'image/png', buffer: PICTURE });
    await page.getByRole('button', { name: 'Record the work' }).click();
    await said('brake fluid is recorded.');
    await page.getByRole('row', { name: /^brake fluid/ }).getByText('by 25 Nov 2028').waitFor();
    await page.getByRole('link', { name: 'receipt.png' }).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('row', { name: /^brake fluid/ }).getByText('12 months late').waitFor();
    await expect.poll(() => page.getByRole('link', { name: 'receipt.png' }).count()).toBe(0);
  });

  test('the sample is left with one press, and nothing is left of it', async () => {
    await page.getByRole('button', { name: 'Leave the sample' }).click();
    await page.getByRole('heading', { name: 'Welcome to Trunnion' }).waitFor();
  });

  test('nothing complained', () => expect(served.complaints).toEqual([]));
});

/** One red dot. */
const PICTURE = Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==', 'base64');
