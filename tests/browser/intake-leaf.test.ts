import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startingSet } from '../../shared-core/care/starting-set.ts';
import { axeFaults } from './axe-faults.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openServedPage, startHousehold, type ServedPage } from './served-page.ts';
import { soundAtEverySize } from './sound-at-every-size.ts';

const ASKED = startingSet('petrol').items.length;

/** A petrol car of 2020, bought on 1 November 2026 and met on the 25th; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('what is known of a car just bought', () => {
  let served: ServedPage;
  let page: Page;

  beforeAll(async () => {
    served = await openServedPage();
    page = served.page;
    await startHousehold(page);
    await page.getByRole('link', { name: 'Car', exact: true }).click();
    await page.getByLabel('Name', { exact: true }).fill('Pip');
    await page.getByRole('textbox', { name: 'First registered' }).fill('1/3/2020');
    await page.getByRole('textbox', { name: 'Kept since' }).fill('1/11/2026');
    await page.getByRole('button', { name: 'Add the car' }).click();
    await page.getByRole('heading', { name: 'Pip', level: 1 }).waitFor();
  });
  afterAll(() => served.close());

  const rows = () => page.locator('[data-answer-row]');
  const row = (name: string) => rows().filter({ has: page.getByRole('toolbar', { name, exact: true }) });
  const part = (name: string): Locator => page.getByRole('region', { name });
  const focusedRow = () => page.evaluate(() => document.activeElement?.closest('[role=toolbar]')?.getAttribute('aria-label') ?? null);
  const answered = (n: number) => page.getByText(`${n} of ${ASKED} answered`).waitFor();
  const pressed = (name: string) => row(name).locator('button[aria-pressed=true]').allInnerTexts();
  const undo = () => page.getByRole('button', { name: 'Undo' }).click();

  test('the leaf on top says in one line that nobody has said it, and leads there', async () => {
    await page.getByText(`Of ${ASKED} items nobody has said when they were last done.`).waitFor();
    await page.getByRole('link', { name: 'Say what is known' }).press('Enter');
    await answered(0);
    await expect.poll(() => rows().count()).toBe(ASKED);
    expect(await part('What is missing of the car').getByRole('button').allInnerTexts()).toEqual(['Enter a reading', 'Add an obligation']);
    await soundAtEverySize(page, 'the leaf');
  });

  test('nothing unknown that could be due is told to wait, but for comfort', async () => {
    // By hand, for a car of 1 March 2020: first or repeat interval of every replaced item of the set is at most 60 months.
    expect(await part('Do now, to start from firm ground').getByRole('listitem').locator('strong').allInnerTexts()).toEqual(['Brake fluid', 'Tyre sealant bottle', 'Wiper blades', 'Coolant', 'Engine air filter', 'Engine oil and filter', 'Spark plugs']);
    // By hand: 60 + 5 + 10 + 90 + 15 + 45 + 45 minutes.
    await part('Do now, to start from firm ground').getByText('4 h 30 min together').waitFor();
    await part('Do now, to start from firm ground').getByText('Nobody knows when it was last done, and people can come to harm.').first().waitFor();
    expect(await part('May wait').getByRole('listitem').locator('strong').allInnerTexts()).toEqual(['Cabin filter']);
  });

  test('one key answers a row and goes to the next; unknown stays to be done', async () => {
    await row('Brake fluid').getByRole('button', { name: 'Proven' }).focus();
    await page.keyboard.press('u');
    await expect.poll(focusedRow).toBe('Brake pads and discs');
    await answered(1);
    expect(await pressed('Brake fluid')).toEqual(['Unknown']);
    await part('Do now, to start from firm ground').getByText('Brake fluid').waitFor();
    await page.keyboard.press('n');
    await expect.poll(focusedRow).toBe('Lights and horn');
    await page.keyboard.press('f');
    await expect.poll(focusedRow).toBe('Steering, suspension and underside');
    await answered(3);
    await part('May wait').getByText('Lights and horn').waitFor();
    await part('Only look now').getByText('never done since first registration on 1 Mar 2020').waitFor();
  });

  test('the arrows go along a row and from row to row', async () => {
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Said');
    await page.keyboard.press('ArrowDown');
    await expect.poll(focusedRow).toBe('Tyre pressures');
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Said');
    await page.keyboard.press('ArrowUp');
    await expect.poll(focusedRow).toBe('Steering, suspension and underside');
  });

  test('all rows are one stop of the Tab key, where one was last', async () => {
    const onRow = () => page.evaluate(() => document.activeElement?.closest('[data-answer-row]') !== null);
    await expect.poll(() => page.locator('[data-answer-row] button[tabindex="0"]').allInnerTexts()).toEqual(['Said']);
    await page.keyboard.press('Tab');
    await expect.poll(onRow).toBe(false);
    await page.keyboard.press('Shift+Tab');
    await expect.poll(focusedRow).toBe('Steering, suspension and underside');
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Said');
    await page.keyboard.press('Shift+Tab');
    await expect.poll(onRow).toBe(false);
    await page.keyboard.press('Tab');
    await expect.poll(focusedRow).toBe('Steering, suspension and underside');
  });

  test('said asks when, takes no paper, and only needs a look', async () => {
    await page.keyboard.press('s');
    await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement).labels?.[0]?.textContent)).toBe('Done on');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').filter({ hasText: 'Write a whole date' }).waitFor();
    expect(await page.getByRole('main').getByText('Papers', { exact: true }).count()).toBe(0);
    await page.keyboard.type('3/5/2026');
    expect(await axeFaults(page)).toEqual([]);
    await page.keyboard.press('Enter');
    await expect.poll(focusedRow).toBe('Tyre pressures');
    await answered(4);
    await row('Steering, suspension and underside').getByText('said to be done 3 May 2026').waitFor();
    await part('Only look now').getByText('Said to be done on 3 May 2026, without a paper').waitFor();
  });

  test('proven brings its paper and its reading, and may wait', async () => {
    await row('Engine oil and filter').getByRole('button', { name: 'Proven' }).click();
    await page.keyboard.type('1/6/2026');
    await page.getByLabel('The odometer showed (mi)').fill('41 200');
    await page.getByRole('button', { name: 'Answer', exact: true }).click();
    await page.getByRole('alert').filter({ hasText: 'What is proven needs its paper.' }).waitFor();
    await page.locator('input[type=file]').setInputFiles({ name: 'invoice.png', mimeType: 'image/png', buffer: PICTURE });
    await page.getByRole('button', { name: 'Answer', exact: true }).click();
    await row('Engine oil and filter').getByText('proven, done 1 Jun 2026').waitFor();
    await answered(5);
    await part('May wait').getByText('Engine oil and filter').waitFor();
    await expect.poll(() => part('What is missing of the car').getByRole('button').allInnerTexts()).toEqual(['Add an obligation']);
  });

  test('an answer is changed: the paper kept before is offered, the reading is not asked again', async () => {
    await row('Engine oil and filter').getByRole('button', { name: 'Proven' }).press('p');
    await page.getByText('Its odometer is entered already.').waitFor();
    await expect.poll(() => page.getByLabel('Paper', { exact: true }).locator('option:checked').innerText()).toBe('invoice.png');
    await page.getByRole('textbox', { name: 'Done on' }).fill('2/6/2026');
    await page.keyboard.press('Enter');
    await row('Engine oil and filter').getByText('proven, done 2 Jun 2026').waitFor();
    await expect.poll(focusedRow).toBe('Engine oil and filter');
    await page.keyboard.press('u');
    await row('Engine oil and filter').getByText('nobody knows when').waitFor();
    await part('Do now, to start from firm ground').getByText('Engine oil and filter').waitFor();
    await answered(5);
  });

  test('an answer is undone', async () => {
    await undo();
    await page.getByRole('status').filter({ hasText: 'Undone.' }).waitFor();
    await row('Engine oil and filter').getByText('proven, done 2 Jun 2026').waitFor();
  });

  test('leaving the form by Escape answers nothing and goes back to the row', async () => {
    await row('Coolant').getByRole('button', { name: 'Said' }).press('s');
    await page.getByRole('textbox', { name: 'Done on' }).waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(focusedRow).toBe('Coolant');
    await expect.poll(() => page.getByRole('textbox', { name: 'Done on' }).count()).toBe(0);
    await answered(5);
  });

  test('answered to the end, the line on the leaf on top is gone', async () => {
    for (let left = ASKED - 5; left > 0; left -= 1) {
      await rows().and(page.locator('[data-open=true]')).first().locator('button').first().press('u');
      await page.getByText(left === 1 ? `All ${ASKED} are answered.` : `${ASKED - left + 1} of ${ASKED} answered`).waitFor();
    }
    await page.getByRole('link', { name: 'Care', exact: true }).click();
    await page.getByRole('heading', { name: 'Service items' }).waitFor();
    await expect.poll(() => page.getByRole('link', { name: 'Say what is known' }).count()).toBe(0);
  });

  test('nothing complained', () => expect(served.complaints).toEqual([]));
});

/** One red dot. */
const PICTURE = Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==', 'base64');
