import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Keyboard } from './keyboard.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

/** From what is needed to what is used, in the sample; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('parts, from need to use', { timeout: 240_000 }, () => {
  let served: SamplePage;
  let page: Page;

  beforeAll(async () => {
    served = await openSamplePage();
    page = served.page;
  });
  afterAll(() => served.close());

  const region = (name: string | RegExp) => page.getByRole('region', { name });
  const button = (name: string | RegExp) => page.getByRole('button', { name });
  const dialog = () => page.getByRole('dialog');
  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).first().waitFor();
  const leaf = (name: string) => page.getByRole('navigation', { name: 'Leaves of Parts' }).getByRole('link', { name, exact: true }).click();
  const closed = () => dialog().waitFor({ state: 'detached' });
  const orders = async () => (await served.must('parts.show', {})).orders;
  const needs = async () => (await served.must('needs.show', {})).needs;

  test('what is needed stands with its day, what there is of it, and what meets it', async () => {
    await page.getByRole('navigation').getByRole('link', { name: 'Parts', exact: true }).click();
    await page.getByRole('heading', { name: 'Parts', level: 1 }).waitFor();
    await page.getByText('17 needs by 23 Feb 2027: 1 on the shelf, 16 to be bought.').waitFor();
    await page.getByRole('row', { name: /Alder: engine oil and filter 5\.6 litres .* to be bought 4\.4 litres Moss motor oil \(shelf, floor\) · 1\.2 litres lacking/ }).waitFor();
    await page.getByLabel('Look ahead').selectOption('30 days');
    await page.getByText(/^15 needs by 25 Dec 2026:/).waitFor();
    await page.getByLabel('Look ahead').selectOption('90 days');
    await region('Sessions ahead').getByText('battery tester is borrowed from a neighbour until 30 Nov 2026 only.').waitFor();
    await served.axeAtEverySize('what is needed');
  });

  test('the order is worked out by the keyboard: proven, by supplier, held against other ways', async () => {
    await leaf('The order');
    const keys = new Keyboard(page);
    await keys.press('Work out the order');
    await said('Looking for what costs least');
    await region('What it comes to').getByText('To buy what is needed costs £253.35.').waitFor({ timeout: 90_000 });
    await region('What it comes to').getByText('Nothing cheaper meets the same needs: it is proven.').waitFor();
    await region('Held against').getByRole('row', { name: 'Each car alone 17 of 17 £272.99' }).waitFor();
    await region('What it costs').getByRole('row', { name: 'the shelf £15.87' }).waitFor();
    await region('Copper Lane Parts').getByRole('row', { name: /Spark plug P1 .*3 £10\.40 £31\.20 £31\.20 Pip/ }).waitFor();
    expect(keys.faults).toEqual([]);
    await served.axeAtEverySize('the order');
  });

  test('its sheet is shown as text, as a table, and can be copied', async () => {
    await button('Order sheet: Overfell Motor Stores').click();
    await expect.poll(() => dialog().getByRole('textbox').inputValue()).toContain('To Overfell Motor Stores: please send the following.');
    await dialog().getByLabel('As').selectOption('Table (CSV)');
    await expect.poll(() => dialog().getByRole('textbox').inputValue()).toContain('"Overfell Motor Stores","","Fern motor oil","2","5 litres","30.90","61.80","0.00","GBP"');
    await dialog().getByRole('button', { name: 'Copy' }).click();
    await dialog().getByRole('status').filter({ hasText: 'Copied.' }).waitFor();
    await served.axeAtEverySize('the sheet of an order');
    await page.keyboard.press('Escape');
    await closed();
  });

  test('what if from one supplier alone: other needs are left, and it says so', async () => {
    await page.getByLabel('What if from').selectOption('Copper Lane Parts');
    await button('Work it out anew').click();
    await region('What it comes to').getByText('from Copper Lane Parts alone').waitFor({ timeout: 90_000 });
    await page.getByText(/cannot be had by .* as asked: from Copper Lane Parts alone/).first().waitFor();
    await page.getByLabel('What if from').selectOption('any supplier');
    await button('Work it out anew').click();
    await region('What it comes to').getByText('To buy what is needed costs £253.35.').waitFor({ timeout: 90_000 });
  });

  test('one part of it is placed; the rest stands, and the placed one is on the way', async () => {
    await button('Place this order: Copper Lane Parts').click();
    await dialog().getByLabel('Their number of it').fill('CL-77');
    await dialog().getByLabel('Delivery, GBP').fill('four');
    await button('Write down as placed').click();
    await dialog().getByRole('alert').filter({ hasText: 'Write an amount of GBP' }).waitFor();
    await dialog().getByLabel('Delivery, GBP').fill('0');
    await served.axeAtEverySize('placing an order');
    await button('Write down as placed').click();
    await closed();
    await said('The order with Copper Lane Parts is placed.');
    await region('Copper Lane Parts').getByText('This was placed.').waitFor();
    await expect.poll(() => page.getByText('Something was entered since').count()).toBe(0);
    expect((await orders()).find((one) => one.order.number === 'CL-77')).toMatchObject({ state: 'on-the-way', order: { expectedOn: '2026-11-28' } });
    await expect.poll(async () => (await needs()).find((one) => one.item === 'pip-plugs')?.state).toBe('on-the-way');
  });

  test('received short by the keyboard: two plugs of three are good, one will not come', async () => {
    await leaf('Placed orders');
    const keys = new Keyboard(page);
    const placed = region('Copper Lane Parts, 25 Nov');
    await placed.getByText('their number CL-77').waitFor();
    await keys.press('Take in what came: Copper Lane Parts, 25 Nov');
    await dialog().waitFor();
    const plugs = dialog().getByRole('group', { name: 'Spark plug P1: 3 to come' });
    await plugs.getByLabel('Good packs').focus();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('3');
    await keys.fill('Will not come', '1');
    await plugs.getByLabel('Place').fill('drawer by the door');
    await keys.press('Take it in');
    // More than is to come is refused, at its own field.
    await dialog().getByRole('alert').filter({ hasText: 'Packs of Spark plug P1 that are still to come: 3.' }).waitFor();
    await plugs.getByLabel('Good packs').fill('2');
    await served.axeAtEverySize('taking in what came');
    await button('Take it in').click();
    await closed();
    await said('Work out what is short in The order.');
    await placed.getByRole('row', { name: /Spark plug P1 .*3 2 0 1 0 / }).waitFor();
    expect(keys.faults).toEqual([]);
    await served.axeAtEverySize('placed orders');
  });

  test('what is short is worked out anew: one plug, and what was not placed', async () => {
    await region('Copper Lane Parts, 25 Nov').getByRole('link', { name: 'Work out what is short' }).click();
    await page.getByText('Something was entered since this was worked out.').waitFor();
    await button('Work it out anew').click();
    await expect.poll(() => page.getByText('Something was entered since').count(), { timeout: 90_000 }).toBe(0);
    await page.getByRole('row', { name: /Spark plug P\d .*1 £[\d.]+ £[\d.]+ £[\d.]+ Pip/ }).waitFor({ timeout: 90_000 });
    const plugs = page.getByRole('row', { name: /^Pip: spark plugs 3 pieces/ });
    await plugs.getByText('2 pieces Spark plug P1, from the shelf · 1 piece Spark plug P1, here by').waitFor();
  });

  test('what is used leaves the shelf, and its undo puts it back', async () => {
    await leaf('The shelf');
    await button('Use: Spark plug P1, 2 pieces').click();
    await dialog().getByLabel('How much, pieces').fill('3');
    await button('Take it off the shelf').click();
    await dialog().getByRole('alert').filter({ hasText: 'Not recorded.' }).waitFor();
    await dialog().getByLabel('How much, pieces').fill('1');
    await dialog().getByLabel('In which car').selectOption('Pip');
    await served.axeAtEverySize('using something');
    await button('Take it off the shelf').click();
    await closed();
    await said('Spark plug P1: 1 piece left.');
    await button('Use: Spark plug P1, 1 piece').waitFor();
    await button('Undo').click();
    await said('Undone.');
    await button('Use: Spark plug P1, 2 pieces').waitFor();
    await served.axeAtEverySize('the shelf');
  });

  test('the shelf is counted: what differs from the books is said', async () => {
    await button('Count the shelf').click();
    await dialog().getByLabel('Red chassis grease').fill('0.25');
    await button('Save the count').click();
    await closed();
    await said('Counted: 1 lot differs from the books.');
    await region('Counts of the shelf').getByText('Red chassis grease: 0.05 kg less than the books had').waitFor();
  });

  test('what has expired goes to disposal, and where it was taken to is kept', async () => {
    await button('For disposal: Clear brake fluid, 1 litre').first().click();
    await button('Keep it for disposal').click();
    await closed();
    await button('Taken to …: Clear brake fluid, 1 litre').click();
    await dialog().getByLabel('Taken to').fill('the council collection point');
    await button('Save where it went').click();
    await closed();
    await region('Kept for disposal').getByText('2 taken away').click();
    await page.getByText('Clear brake fluid, 1 litre: taken to the council collection point on 25 Nov 2026.').waitFor();
  });

  test('a tool that is missing is there; a part, its specification and an offer are entered', async () => {
    await leaf('Tools');
    await button('I have it now: oil filter wrench').click();
    await said('oil filter wrench is there now.');
    await served.axeAtEverySize('tools');
    await leaf('Offers and parts');
    await button('Add a specification').click();
    await dialog().getByLabel('Name').fill('red');
    await dialog().getByRole('button', { name: 'Save' }).click();
    await dialog().getByRole('alert').filter({ hasText: 'Not recorded.' }).waitFor();
    await dialog().getByLabel('Name').fill('cabin lamp 5 W');
    await dialog().getByRole('button', { name: 'Save' }).click();
    await closed();
    await page.getByLabel('Find a part, number or supplier').fill('cabin lamp 5 W');
    await region('Specifications').getByRole('button', { name: 'Add a part: cabin lamp 5 W' }).click();
    await dialog().getByLabel('Name').fill('Lamp Z9');
    await served.axeAtEverySize('the form of a part');
    await dialog().getByRole('button', { name: 'Save' }).click();
    await closed();
    await page.getByLabel('Find a part, number or supplier').fill('lamp z9');
    await region('The parts').getByRole('button', { name: 'Add an offer: Lamp Z9' }).click();
    await dialog().getByLabel('Price of a pack, GBP').fill('4.20');
    await dialog().getByRole('button', { name: 'Save' }).click();
    await closed();
    await region('Offers').getByRole('row', { name: /Lamp Z9 .*£4\.20/ }).waitFor();
    await page.getByLabel('Find a part, number or supplier').fill('');
    await served.axeAtEverySize('offers and parts');
  });

  test('a price list is pasted, looked at row by row, kept, and taken back whole', async () => {
    await page.getByRole('link', { name: 'Take in a price list' }).click();
    await page.getByLabel('Or paste the rows').fill('Number,Name,Price\nCL-P1,,10.10\n,Fern motor oil,oops\nQQ-1,Thing,1.00\n');
    await button('Look at what was pasted').click();
    await page.getByText('Whose prices are these? Some rows do not say.').waitFor();
    await page.getByLabel('Whose prices').selectOption('Copper Lane Parts');
    await page.getByText('1 new price · 1 of no part here · 1 cannot be taken in').waitFor();
    await page.getByRole('row', { name: /^3 cannot be taken in oops is not an amount in GBP/ }).waitFor();
    await page.getByRole('row', { name: /^2 new price Spark plug P1 .* £10\.10 before £11\.50/ }).waitFor();
    await served.axeAtEverySize('a price list');
    const price = async () => (await served.must('parts.show', {})).offers.find((one) => one.offer.id === 'copper-p1')?.offer.priceMinor;
    expect(await price()).toBe(1150);
    await button('Keep 1 price').click();
    await said('1 price is kept.');
    expect(await price()).toBe(1010);
    await button('Undo').click();
    await said('Undone.');
    expect(await price()).toBe(1150);
  });

  test('nothing was complained of', () => expect(served.complaints).toEqual([]));
});
