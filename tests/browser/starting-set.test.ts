import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startingSet } from '../../shared-core/care/starting-set.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openServedPage, startHousehold, type ServedPage } from './served-page.ts';
import { soundAtEverySize } from './sound-at-every-size.ts';

const PETROL = startingSet('petrol').items;
const CAMPER = startingSet('camper').items;
const MARK = 'not confirmed · common practice: check your handbook';

/** A car used hard that starts empty; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('a starting set, and what it brought confirmed', () => {
  let served: ServedPage;
  let page: Page;

  beforeAll(async () => {
    served = await openServedPage();
    page = served.page;
    await startHousehold(page);
    await page.getByRole('link', { name: 'Car', exact: true }).click();
    await page.getByLabel('Name', { exact: true }).fill('Pip');
    await page.getByRole('textbox', { name: 'First registered' }).fill('1/11/2026');
    await page.getByLabel('How hard it is used').selectOption('0.5');
    await page.getByLabel('Starting set').selectOption('none');
    await page.getByRole('button', { name: 'Add the car' }).click();
    await page.getByRole('heading', { name: 'Pip', level: 1 }).waitFor();
  });
  afterAll(() => served.close());

  const row = (name: string) => page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: new RegExp(`^${name}`) }) });
  const focusedLabel = () => page.evaluate(() => (document.activeElement as HTMLInputElement).labels?.[0]?.textContent ?? null);
  const sheetIsGone = () => page.getByRole('dialog').waitFor({ state: 'detached' });
  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).waitFor();

  test('a car without items is offered the set that fits; lines are left out, a printed date is taken', async () => {
    await page.getByRole('button', { name: 'Start from a set' }).click();
    await expect.poll(() => page.getByLabel('Starting set').locator('option:checked').innerText()).toBe(`Petrol car: ${PETROL.length} items`);
    await page.getByRole('checkbox', { name: 'Timing belt: its age, and its own interval' }).uncheck();
    await page.getByRole('textbox', { name: 'Date printed on it' }).fill('31/3/2028');
    await soundAtEverySize(page, 'the form of a set');
    await page.getByRole('button', { name: 'Add the items' }).click();
    await said(`${PETROL.length - 1} items are cared for now.`);
    await sheetIsGone();
    await row('Tyre sealant bottle').getByText('31 Mar 2028').first().waitFor();
    expect(await row('Timing belt').count()).toBe(0);
  });

  test('severe use stands beside each interval, and what is not confirmed is marked', async () => {
    // By hand: half of 60 and of 12 months, half of 10 000 miles.
    await row('Coolant').getByText('every 60 months · for severe use every 30 months').waitFor();
    await row('Engine oil and filter').getByText('for severe use every 6 months or 5000 mi').waitFor();
    await expect.poll(() => page.getByText(MARK).count()).toBe(PETROL.length - 1);
  });

  test('a second set adds only what the car has not', async () => {
    await page.getByRole('button', { name: 'Add from a set' }).click();
    await page.getByLabel('Starting set').selectOption('camper');
    const both = CAMPER.filter((item) => PETROL.some((one) => one.name === item.name)).length - 1;
    await page.getByText(`The car has ${both} of this set already; they stay as they are.`).waitFor();
    await expect.poll(() => page.getByRole('dialog').getByRole('checkbox').count()).toBe(CAMPER.length - both);
    await page.getByRole('button', { name: 'Add the items' }).click();
    await said(`${CAMPER.length - both} items are cared for now.`);
    await sheetIsGone();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => page.getByText(MARK).count()).toBe(PETROL.length - 1);
  });

  test('what the car may have under another name is asked about, and left out until it is ticked', async () => {
    await page.getByRole('button', { name: 'Add an item' }).click();
    await page.getByRole('dialog').getByLabel('What is cared for').fill('belt of the timing: its age, and its own interval');
    await page.getByLabel('Every so many months').fill('60');
    await page.getByLabel('Where the interval comes from').fill('Maker’s sheet 3');
    await page.getByLabel('I have compared it with that source').check();
    await page.getByRole('dialog').getByRole('button', { name: 'Add the item', exact: true }).click();
    await sheetIsGone();
    await page.getByRole('button', { name: 'Add from a set' }).click();
    const asked = page.getByRole('group', { name: 'Perhaps there under another name' });
    await asked.getByText('the car has “belt of the timing: its age, and its own interval”').waitFor();
    const belt = asked.getByRole('checkbox', { name: 'Timing belt: its age, and its own interval' });
    await expect.poll(() => belt.isChecked()).toBe(false);
    await soundAtEverySize(page, 'the question of near names');
    await page.getByRole('button', { name: 'Add the items' }).click();
    await page.getByRole('alert').filter({ hasText: 'The car has everything of the set' }).waitFor();
    await belt.check();
    await page.getByRole('button', { name: 'Add the items' }).click();
    await said('1 item is cared for now.');
    await sheetIsGone();
    await row('Timing belt').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => row('Timing belt').count()).toBe(0);
  });

  test('confirming goes from one to the next by Enter; the source given last is offered again', async () => {
    const count = PETROL.length - 1;
    await page.getByRole('button', { name: `Confirm ${count} intervals` }).press('Enter');
    await expect.poll(focusedLabel).toBe('Page');
    const first = await page.getByRole('dialog').getByRole('status').locator('strong').innerText();
    await page.keyboard.type('212');
    await page.keyboard.press('Enter');
    await page.getByText(`2 of ${count}`).waitFor();
    await soundAtEverySize(page, 'the form of an interval');
    const second = await page.getByRole('dialog').getByRole('status').locator('strong').innerText();
    await expect.poll(focusedLabel).toBe('Page');
    await page.getByLabel('Source', { exact: true }).fill('Maker’s sheet 7');
    await page.getByLabel('Every so many months').fill('7');
    await page.keyboard.press('Enter');
    await page.getByText(`3 of ${count}`).waitFor();
    await expect.poll(() => page.getByLabel('Source', { exact: true }).inputValue()).toBe('Maker’s sheet 7');
    await page.getByRole('button', { name: 'Not this one now' }).press('Enter');
    await page.getByText(`4 of ${count}`).waitFor();
    await expect.poll(focusedLabel).toBe('Page');
    await page.keyboard.press('Escape');
    await sheetIsGone();
    await row(first).getByText('Handbook, page 212').waitFor();
    await row(second).getByText(/every 7 months.*Maker’s sheet 7/).waitFor();
    await expect.poll(() => page.getByText(MARK).count()).toBe(count - 2);
  });

  test('one is confirmed from its own row, refused without a source, and undone', async () => {
    await page.getByRole('button', { name: 'Confirm the interval of Coolant' }).press('Enter');
    await expect.poll(focusedLabel).toBe('Page');
    await page.keyboard.press('Escape');
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Confirm the interval of Coolant');
    await page.keyboard.press('Enter');
    await page.getByLabel('Source', { exact: true }).fill('');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').filter({ hasText: 'This is empty.' }).waitFor();
    await page.getByLabel('Source', { exact: true }).fill('Handbook');
    await page.keyboard.press('Enter');
    await sheetIsGone();
    await said('Coolant is confirmed: Handbook.');
    await expect.poll(() => row('Coolant').getByText(MARK).count()).toBe(0);
    await page.getByRole('button', { name: 'Undo' }).click();
    await row('Coolant').getByText(MARK).waitFor();
    await soundAtEverySize(page, 'the car');
  });

  test('nothing complained', () => expect(served.complaints).toEqual([]));
});
