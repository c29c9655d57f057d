import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

describe.skipIf(chromiumHere === null)('the Ledger screen', () => {
  let sample: SamplePage;
  beforeAll(async () => {
    sample = await openSamplePage();
    await sample.page.getByRole('navigation').getByRole('link', { name: 'Ledger', exact: true }).press('Enter');
    await sample.page.getByRole('heading', { name: 'Ledger', level: 1 }).waitFor();
  });
  afterAll(() => sample.close());

  const leaf = async (name: string) => {
    await sample.page.getByRole('navigation', { name: 'Parts of the Ledger' }).getByRole('link', { name, exact: true }).press('Enter');
    await sample.page.locator('a[aria-current=page]', { hasText: name }).waitFor();
  };
  const dialog = () => sample.page.getByRole('dialog');

  test('costs: of all cars, of one, the lines behind them as a table, fuel of a year and what an hour counts', async () => {
    const { page } = sample;
    await page.getByText(/^Paid in all/).waitFor();
    await sample.axeAtEverySize('costs of all');
    await page.getByRole('button', { name: 'Alder', exact: true }).press('Enter');
    await page.getByRole('heading', { name: 'Alder, year by year' }).waitFor();
    await page.getByText('My own time counts £12.00 an hour, and is in no sum.').waitFor();
    await sample.axeAtEverySize('costs of one');

    await page.getByLabel('Year', { exact: true }).selectOption({ index: 2 });
    await page.getByText(/^\d+ lines: £/).waitFor();
    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as a table (CSV)' }).press('Enter');
    const table = readFileSync(await (await saved).path(), 'utf8');
    expect(table.split('\r\n')[0]).toBe('\ufeff"date","kind","amount","currency","car","wish","what"');
    expect(table).toContain('"Alder"');

    await page.getByRole('button', { name: 'Enter fuel of a year' }).press('Enter');
    await dialog().getByLabel('Paid, in GBP').fill('1234.56');
    await page.keyboard.press('Enter');
    await page.getByText('Fuel of 2026 is entered.').waitFor();
    await page.getByRole('cell', { name: '£1,234.56' }).first().waitFor();

    await page.getByRole('button', { name: 'What an hour of mine counts' }).press('Enter');
    await dialog().getByLabel('An hour of my own work, in GBP').fill('nothing');
    await page.keyboard.press('Enter');
    await dialog().getByRole('alert').getByText(/amount/).waitFor();
    await dialog().getByLabel('An hour of my own work, in GBP').fill('0');
    await page.keyboard.press('Enter');
    await page.getByText('My own time counts nothing, and is in no sum.').waitFor();
  });

  test('a quote line by line, held against what should be paid at home, then against a record', async () => {
    const { page } = sample;
    await leaf('Quotes');
    await page.getByText('The price and the work are not for the same things, so no saving is claimed. Both sides stand below.').first().waitFor();
    await sample.axeAtEverySize('quotes');
    await page.getByRole('button', { name: 'Keep a quote' }).press('Enter');
    await dialog().getByLabel('Car', { exact: true }).selectOption('Alder');
    await dialog().getByLabel('Who named it').fill('the workshop at the mill');
    await page.keyboard.press('Enter');
    await dialog().getByRole('alert').getByText(/Say what the price is for/).waitFor();
    await dialog().getByRole('checkbox', { name: 'cabin filter' }).check();
    await dialog().getByRole('checkbox', { name: 'engine oil and filter' }).check();
    await dialog().getByLabel('Prices').selectOption('line by line');
    await dialog().getByRole('button', { name: 'Add a price' }).press('Enter');
    await dialog().getByRole('group', { name: 'Price 1' }).getByLabel('Price, in GBP').fill('40');
    await dialog().getByRole('group', { name: 'Price 1' }).getByRole('checkbox', { name: 'cabin filter' }).check();
    await sample.axeAtEverySize('a quote being kept');
    await dialog().getByRole('button', { name: 'Save' }).press('Enter');
    await page.getByText('The quote of the workshop at the mill is kept.').waitFor();
    const card = page.getByRole('region', { name: 'Alder: the workshop at the mill, 25 Nov 2026' });
    await card.getByText(/^Like for like, doing it at home should save £?/).waitFor();
    await card.getByRole('button', { name: /^Choose what was done instead/ }).press('Enter');
    await dialog().getByRole('checkbox', { name: /^Oil, cabin filter and a look at the brakes/ }).check();
    await dialog().getByRole('button', { name: 'Save' }).press('Enter');
    await card.getByText('Like for like, 29.50 GBP were saved.').waitFor();
    await card.getByText('not quoted').first().waitFor();
    await card.getByRole('button', { name: /^Remove/ }).press('Enter');
    await page.getByText('The quote is taken away.').waitFor();
    await expect.poll(() => card.count()).toBe(0);
  });

  test('ahead: two years of one car by quarter, with what is planned and what is in no sum', async () => {
    const { page } = sample;
    await leaf('Ahead');
    await page.getByRole('heading', { name: 'By quarter' }).waitFor();
    await sample.axeAtEverySize('ahead');
    await page.getByLabel('Costs of').selectOption('Pip');
    await page.getByRole('heading', { name: 'By car' }).waitFor({ state: 'detached' });
    expect(await page.getByRole('table', { name: 'What is planned, month by month' }).getByRole('cell', { name: 'Pip', exact: true }).count()).toBeGreaterThan(3);
  });
});
