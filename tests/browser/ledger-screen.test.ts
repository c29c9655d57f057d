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
    await card.getByText(/^Like for like, doing it at home should save £/).waitFor();
    await card.getByRole('button', { name: /^Choose what was done instead/ }).press('Enter');
    await dialog().getByRole('checkbox', { name: /^Oil, cabin filter and a look at the brakes/ }).check();
    await dialog().getByRole('button', { name: 'Save' }).press('Enter');
    await card.getByText('Like for like, £29.50 were saved.').waitFor();
    await card.getByText('not quoted').first().waitFor();
    await card.getByRole('button', { name: /^Remove/ }).press('Enter');
    await page.getByText('The quote is removed.').waitFor();
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

  test('wishes: what is put by, a wish entered, moved up, planned, let go and wanted again; and what they do to the budget', async () => {
    const { page } = sample;
    await leaf('Wishes');
    await page.getByRole('button', { name: 'Add a wish' }).waitFor();
    await sample.axeAtEverySize('wishes');
    await page.getByRole('button', { name: 'What is put by' }).press('Enter');
    await dialog().getByLabel('Each month, in GBP').fill('50');
    await page.keyboard.press('Enter');
    await page.getByText('What is put by is entered.').waitFor();

    await page.getByRole('button', { name: 'Add a wish' }).press('Enter');
    await dialog().getByLabel('Car', { exact: true }).selectOption('Wren');
    await dialog().getByLabel('What is wished for').fill('leather seats');
    await dialog().getByRole('button', { name: 'Add a thing' }).press('Enter');
    await dialog().getByLabel('Thing 1', { exact: true }).fill('two covers');
    await dialog().getByLabel('Price, in GBP').fill('dear');
    await page.keyboard.press('Enter');
    await dialog().getByRole('alert').getByText(/amount/).waitFor();
    await dialog().getByLabel('Price, in GBP').fill('240');
    await sample.axeAtEverySize('a wish being entered');
    await dialog().getByRole('button', { name: 'Save' }).press('Enter');
    await page.getByText('leather seats is entered.').waitFor();
    const title = /^(\d+)\. leather seats, Wren$/;
    const place = async () => Number(title.exec(await page.getByRole('heading', { name: title }).innerText())?.[1]);
    const last = await place();
    await page.getByRole('button', { name: 'Sooner: leather seats' }).press('Enter');
    await page.getByRole('heading', { name: `${last - 1}. leather seats, Wren` }).waitFor();
    await page.getByRole('button', { name: 'Make it a task: leather seats' }).press('Enter');
    await page.getByRole('button', { name: 'No task any more: leather seats' }).press('Enter');
    await page.getByRole('button', { name: 'Let it go: leather seats' }).press('Enter');
    await page.getByText('leather seats is let go.').waitFor();
    await page.getByRole('button', { name: 'Want it again: leather seats' }).press('Enter');
    await page.getByRole('heading', { name: title }).waitFor();

    await leaf('Ahead');
    await page.getByLabel('Costs of').selectOption('Wren');
    await page.getByRole('checkbox', { name: 'with the wishes, as they are paid for' }).press('Space');
    await page.getByText(/Without the wishes \(.*leather seats.*\): £/).waitFor();
    expect(sample.complaints).toEqual([]);
  });
});
