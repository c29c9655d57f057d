import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeFaults } from './axe-faults.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';
import { openServedPage, startHousehold, type ServedPage } from './served-page.ts';

/** What is shown of Parts on a page, by the names that a reader of the screen hears. */
function partsOf(page: Page) {
  return {
    region: (name: string | RegExp) => page.getByRole('region', { name }),
    button: (name: string | RegExp) => page.getByRole('button', { name }),
    dialog: () => page.getByRole('dialog'),
    closed: () => page.getByRole('dialog').waitFor({ state: 'detached' }),
    said: (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).first().waitFor(),
    enter: async () => {
      await page.getByRole('navigation').getByRole('link', { name: 'Parts', exact: true }).click();
      await page.getByRole('heading', { name: 'Parts', level: 1 }).waitFor();
    },
    leaf: (name: string) => page.getByRole('navigation', { name: 'Leaves of Parts' }).getByRole('link', { name, exact: true }).click(),
  };
}

describe.skipIf(chromiumHere === null)('parts, where not all goes as planned', { timeout: 120_000 }, () => {
  let served: SamplePage;
  let page: Page;
  let on: ReturnType<typeof partsOf>;

  beforeAll(async () => {
    served = await openSamplePage();
    page = served.page;
    on = partsOf(page);
    await on.enter();
  });
  afterAll(() => served.close());

  const orderNumbered = async (number: string) => (await served.must('parts.show', {})).orders.find((one) => one.order.number === number);

  test('the order is stopped while it is worked out: it says so, and working it out again ends as ever', async () => {
    await on.leaf('The order');
    await on.button('Work out the order').click();
    await on.button('Stop, and take the best so far').click();
    await page.getByText(/^Stopped before (any order was found|it was held against)/).waitFor();
    expect(await on.button('Stop, and take the best so far').count()).toBe(0);
    await on.button(/^Work (out the order|it out anew)$/).click();
    await on.region('Held against').getByRole('row', { name: /^Each car alone/ }).waitFor({ timeout: 90_000 });
    await on.region('What it comes to').getByText('To buy what is needed costs £253.35.').waitFor();
    await expect.poll(() => page.getByText(/^Stopped before/).count()).toBe(0);
  });

  test('its sheet is printed alone: the rows, what is paid, and nothing of the screen', async () => {
    await on.button('Order sheet: Copper Lane Parts').click();
    await on.dialog().getByRole('button', { name: 'Print' }).waitFor();
    await on.dialog().getByLabel('As').selectOption('Table (CSV)');
    await expect.poll(() => on.dialog().getByRole('textbox').inputValue()).toContain('"Copper Lane Parts"');
    const rows = (await on.dialog().getByRole('textbox').inputValue()).trim().split('\n').length - 1;
    const sheet = page.locator('[data-order-sheet]');
    expect(await sheet.isVisible()).toBe(false);
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => sheet.isVisible()).toBe(true);
    expect([await page.getByRole('heading', { name: 'Parts', level: 1 }).isVisible(), await on.dialog().isVisible()]).toEqual([false, false]);
    expect(await sheet.locator('tbody').first().locator('tr').count()).toBe(rows);
    expect(await sheet.innerText()).toContain('Spark plug P1');
    await page.emulateMedia({ media: 'screen' });
    await page.keyboard.press('Escape');
    await on.closed();
  });

  test('an order placed at a counter is entered by hand: an offer with its price, and a part without', async () => {
    await on.leaf('Placed orders');
    await on.button('Enter an order placed by hand').click();
    const form = on.dialog();
    await form.getByLabel('Supplier').selectOption('Copper Lane Parts');
    await form.getByLabel('Their number of it').fill('CL-900');
    await form.getByLabel('Delivery, GBP, if not as usual').fill('0');
    await form.getByLabel('Line 1', { exact: true }).selectOption('Spark plug P1: 1 piece for 11.50');
    await expect.poll(() => form.getByLabel('A pack, GBP').inputValue()).toBe('11.50');
    await form.getByLabel('Packs').fill('none');
    await form.getByRole('button', { name: 'Write down as placed' }).click();
    await form.getByRole('alert').filter({ hasText: 'Not recorded.' }).waitFor();
    await form.getByLabel('Packs').fill('2');
    await form.getByRole('button', { name: 'Add a line' }).click();
    await form.getByLabel('Line 2', { exact: true }).selectOption('part bulb-l3');
    await form.getByLabel('Packs').nth(1).fill('1');
    await form.getByLabel('In a pack').nth(1).fill('2');
    await form.getByLabel('A pack, GBP').nth(1).fill('3.80');
    await served.axeAtEverySize('an order by hand');
    await form.getByRole('button', { name: 'Write down as placed' }).click();
    await on.closed();
    await on.said('The order with Copper Lane Parts is placed.');
    // By hand: 2 * 11.50 and 3.80 are 26.80, with no delivery.
    expect(await orderNumbered('CL-900')).toMatchObject({ state: 'on-the-way', goodsMinor: 2680, paidMinor: 2680 });
  });

  test('what came and is not wanted is sent back and leaves the shelf; what never comes is claimed; what is to come back is named', async () => {
    const placed = on.region('Copper Lane Parts, 25 Nov');
    await on.button('Take in what came: Copper Lane Parts, 25 Nov').click();
    const bulbs = on.dialog().getByRole('group', { name: 'Tail lamp bulb L3: 1 to come' });
    await bulbs.getByLabel('Good packs').fill('0');
    await bulbs.getByLabel('Will not come').fill('1');
    await on.button('Take it in').click();
    await on.closed();
    await placed.getByText('delivered', { exact: true }).waitFor();
    await on.button('Send back or claim: Copper Lane Parts, 25 Nov').click();
    await on.button('Write it down').click();
    await on.dialog().getByRole('alert').filter({ hasText: 'Not recorded.' }).waitFor();
    await on.dialog().getByLabel('Spark plug P1: 2 came').fill('1');
    await on.dialog().getByLabel('Spark plug P1: 2 pieces left').fill('1');
    await on.dialog().getByLabel('Tail lamp bulb L3: 1 never came or came wrong; money back without sending').fill('1');
    await served.axeAtEverySize('sending back');
    await on.button('Write it down').click();
    await on.closed();
    await on.said('Written down: £15.30 is expected for it.');
    await placed.getByText('Sent back or claimed on 25 Nov: £15.30 expected, £0.00 came.').waitFor();
    const order = await orderNumbered('CL-900');
    const lots = (await served.must('parts.show', {})).shelf.filter((one) => one.lot.order === order?.order.id).map((one) => `${one.partName} ${one.left}`);
    expect(lots.sort()).toEqual(['Spark plug P1 1']);
  });

  test('its refund comes in two parts; with the second nothing more is asked for', async () => {
    const placed = on.region('Copper Lane Parts, 25 Nov');
    await placed.getByRole('button', { name: /^Enter a refund:/ }).click();
    await expect.poll(() => on.dialog().getByLabel('Came back, GBP').inputValue()).toBe('15.30');
    await on.dialog().getByLabel('Came back, GBP').fill('5');
    await on.button('Enter the refund').click();
    await on.closed();
    await on.said('A refund of £5.00 is entered.');
    await placed.getByText('£15.30 expected, £5.00 came.').waitFor();
    await placed.getByRole('button', { name: /^Enter a refund:/ }).click();
    await expect.poll(() => on.dialog().getByLabel('Came back, GBP').inputValue()).toBe('10.30');
    await on.button('Enter the refund').click();
    await on.closed();
    await placed.getByText('£15.30 expected, £15.30 came.').waitFor();
    await expect.poll(() => placed.getByRole('button', { name: /^Enter a refund:/ }).count()).toBe(0);
  });

  test('what is still to come is cancelled, and its undo lets it come', async () => {
    const placed = on.region('Copper Lane Parts, 22 Nov');
    await placed.getByText('on the way', { exact: true }).waitFor();
    await on.button('Cancel what is to come: Copper Lane Parts, 22 Nov').click();
    await on.said('What was still to come from Copper Lane Parts is cancelled.');
    await placed.getByText('cancelled', { exact: true }).waitFor();
    await on.button('Undo').click();
    await placed.getByText('on the way', { exact: true }).waitFor();
  });

  test('nothing was complained of', () => expect(served.complaints).toEqual([]));
});

describe.skipIf(chromiumHere === null)('parts, where nothing stands yet', { timeout: 60_000 }, () => {
  let served: ServedPage;
  let page: Page;
  let on: ReturnType<typeof partsOf>;

  beforeAll(async () => {
    served = await openServedPage();
    page = served.page;
    on = partsOf(page);
    await startHousehold(page);
    await on.enter();
  });
  afterAll(() => served.close());

  const LEAVES: readonly { readonly leaf: string; readonly says: readonly string[] }[] = [
    { leaf: 'What is needed', says: ['Nothing that falls due by 23 Feb 2027 needs a part.', 'No task says yet what it takes.', 'No task stands yet. Add what is cared for in Car.'] },
    { leaf: 'The order', says: ['No order is worked out yet.'] },
    { leaf: 'Placed orders', says: ['No order is placed.', 'Enter a supplier in Offers and parts first.'] },
    { leaf: 'The shelf', says: ['Nothing stands on the shelf.', 'Nothing stands here.', 'Nothing is kept for disposal.'] },
    { leaf: 'Tools', says: ['No tool is entered.'] },
    { leaf: 'Offers and parts', says: ['No offer stands yet.', 'An offer needs a supplier and a part.', 'No part is entered.', 'No specification is entered.', 'No supplier is entered.'] },
  ];

  test.each(LEAVES)('$leaf says what is missing and what to do first', async ({ leaf, says }) => {
    await on.leaf(leaf);
    for (const text of says) await page.getByText(text).first().waitFor();
    expect(await axeFaults(page), `${leaf}, empty`).toEqual([]);
  });

  test('an order of nothing says so, and offers nothing to place', async () => {
    await on.leaf('The order');
    await on.button('Work out the order').click();
    await page.getByText('Nothing that falls due within 90 days needs a part.').waitFor();
    expect(await on.button(/^Place this order/).count()).toBe(0);
  });

  test('nothing was complained of', () => expect(served.complaints).toEqual([]));
});
