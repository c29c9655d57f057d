import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Keyboard } from './keyboard.ts';
import { chromiumHere } from './launch-chromium.ts';
import { printedPages, printedText } from './printed-page.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

/** One point of white. */
const PICTURE = Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8/5+hHgAHggJ/PchI7wAAAABJRU5ErkJggg==', 'base64');

/** A visit to a garage from the request to what came back; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('a garage booking', { timeout: 180_000 }, () => {
  let sample: SamplePage;
  let page: Page;

  beforeAll(async () => {
    sample = await openSamplePage();
    page = sample.page;
    await sample.must('session.keep', { sessions: [{ id: 'visit', day: '2026-12-17' as never, place: 'corner', tasks: ['pip-oil', 'pip-brake-fluid'].map((id) => ({ kind: 'item', id })) }] });
  });
  afterAll(() => sample.close());

  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).first().waitFor();
  const dialog = () => page.getByRole('dialog');
  /** What has the focus as a sheet opens is its first field, and not what closes it. */
  const firstField = (label: string) => expect.poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement | null)?.labels?.[0]?.textContent ?? '')).toBe(label);
  const part = (title: string) => page.getByRole('group', { name: title, exact: true });

  test('says on Sessions and on the yard by when it is to be asked, and is opened by the keyboard', async () => {
    await page.getByRole('list', { name: 'Sessions' }).getByRole('button', { name: /Thu 17 Dec/ }).click();
    // By hand: 17 December less the garage's 10 days.
    await dialog().getByText('At the garage: not asked yet, ask by 7 Dec 2026').waitFor();
    await page.keyboard.press('Escape');
    const keys = new Keyboard(page);
    await keys.press('Sessions');
    await page.getByText('At the garage: not asked yet, ask by 7 Dec 2026').waitFor();
    await page.getByRole('link', { name: /^Garage booking: Thu 17 Dec/ }).waitFor();
    await keys.press(/^Garage booking: Thu 17 Dec/);
    await page.getByRole('heading', { name: /^Garage booking: Thu 17 Dec/, level: 1 }).waitFor();
    await page.getByText('The garage wants 10 days’ notice: ask by 7 Dec.').waitFor();
    expect(keys.faults).toEqual([]);
    expect(await page.getByRole('link', { name: /^Garage booking/ }).count()).toBe(0);
  });

  test('the request is written by the keyboard, with a line that is not wanted', async () => {
    const keys = new Keyboard(page);
    await keys.press('Write the request');
    await dialog().waitFor();
    await firstField('Asked on (empty: not yet)');
    await sample.axeAtEverySize('the form of a request');
    await keys.press('Add a line to Pip: not wanted');
    await keys.fill('Pip: not wanted, Line 1', 'no flush');
    await keys.fill('How the garage reaches you', 'after four');
    await keys.press('Keep the request');
    await said('The request is written.');
    await part('Please do not do').getByText('no flush').waitFor();
    await page.getByRole('button', { name: 'It was asked today' }).click();
    await page.getByText(/^At the garage: asked on 25 Nov 2026, no answer yet/).waitFor();
    await sample.axeAtEverySize('a request');
    expect(keys.faults).toEqual([]);
  });

  test.each(['A4', 'Letter'] as const)('prints on one page of %s', async (paper) => {
    await page.getByText(paper, { exact: true }).click();
    const pages = await printedPages(page, paper);
    expect(pages.length).toBe(1);
    const text = pages.map(printedText).join(' ');
    for (const line of ['Request to the garage on the corner', 'no flush', 'brake fluid', 'Please answer to: after four']) expect(text).toContain(line);
    for (const never of ['Change the request', 'Prices named', 'Print', 'All sessions']) expect(text).not.toContain(never);
  });

  test('a price over both lines is entered, the day is booked with the session moved there, and that is undone', async () => {
    await page.getByRole('button', { name: 'Enter a price' }).click();
    await dialog().getByLabel('Amount 1 in GBP').fill('120');
    for (const box of await dialog().getByRole('group', { name: 'Price 1 is for' }).getByRole('checkbox').all()) await box.check();
    const [chosen] = await Promise.all([page.waitForEvent('filechooser'), dialog().getByText('Choose files').click()]);
    await chosen.setFiles({ name: 'quote.png', mimeType: 'image/png', buffer: PICTURE });
    await dialog().getByRole('button', { name: 'Keep the price' }).click();
    await page.getByRole('link', { name: 'The paper it stands on' }).waitFor();
    await page.getByText('together £120.00').waitFor();
    await page.getByRole('button', { name: 'It is booked' }).click();
    await firstField('Day given');
    await dialog().getByLabel('Day given', { exact: true }).fill('2026-12-18');
    await dialog().getByRole('button', { name: 'Book it' }).click();
    await dialog().getByRole('alert').filter({ hasText: 'The garage gives 18 Dec 2026, the session stands on 17 Dec 2026.' }).waitFor();
    await dialog().getByLabel('Move the session to that day as well').check();
    await dialog().getByLabel('By the price of').selectOption({ index: 1 });
    await dialog().getByRole('button', { name: 'Book it' }).click();
    await page.getByRole('heading', { name: /^Garage booking: Fri 18 Dec/ }).waitFor();
    await page.getByText('For Fri 18 Dec, by the price of the garage on the corner').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('heading', { name: /^Garage booking: Thu 17 Dec/ }).waitFor();
    await page.getByText('Not booked yet.').waitFor();
  });

  test('what came back is held against what was asked: less for less work is no saving', async () => {
    await page.getByRole('button', { name: 'Say what came back' }).click();
    await firstField('Done on');
    await dialog().getByLabel('brake fluid', { exact: true }).selectOption('not done');
    await dialog().getByLabel('What the garage said of brake fluid').fill('no time left');
    await dialog().getByLabel('Charged in all, in GBP').fill('80');
    const [chosen] = await Promise.all([page.waitForEvent('filechooser'), dialog().getByText('Choose files').click()]);
    await chosen.setFiles({ name: 'invoice.png', mimeType: 'image/png', buffer: PICTURE });
    await dialog().getByRole('button', { name: 'Add something done unasked' }).click();
    await dialog().getByLabel('Done unasked 1').fill('a wash');
    await sample.axeAtEverySize('the form of what came back');
    await dialog().getByRole('button', { name: 'Keep what came back' }).click();
    await said('What came back is kept.');
    await part('Asked and not done').getByText('brake fluid (no time left)').waitFor();
    expect(await page.getByRole('link', { name: 'The invoice' }).getAttribute('href')).toMatch(/^\/papers\/[0-9a-f]{64}$/);
    await part('Done unasked').getByText('a wash').waitFor();
    await page.getByText('£80.00 was charged and £120.00 was quoted, but not for the same work: the difference says nothing.').waitFor();
    await page.getByText('The price also covers what was not done: no difference.').waitFor();
    await sample.axeAtEverySize('what came back');
  });

  test('what was not done is asked anew, and what came back stands beneath it', async () => {
    await page.getByText('"brake fluid" was asked for and not done. Ask anew for it, here or elsewhere.').waitFor();
    await page.getByRole('button', { name: 'Ask anew for what is left' }).click();
    await firstField('Asked on (empty: not yet)');
    expect(await dialog().getByLabel('Pip: wanted, Line 1').inputValue()).toMatch(/brake fluid/i);
    expect(await dialog().getByLabel('Pip: wanted, Line 2').count()).toBe(0);
    await dialog().getByLabel('Asked on (empty: not yet)', { exact: true }).fill('2026-11-25');
    await dialog().getByRole('button', { name: 'Keep the request' }).click();
    await page.getByText(/^At the garage: asked on 25 Nov 2026, no answer yet/).waitFor();
    await part('the garage on the corner: done on 25 Nov 2026').getByRole('heading', { name: 'Asked and not done' }).waitFor();
    await sample.axeAtEverySize('a request after what came back');
  });

  test('a visit of the past is found at the foot of Sessions; nothing is booked at home', async () => {
    await page.getByRole('link', { name: 'All sessions' }).click();
    await page.getByRole('link', { name: /^Open: .*the garage on the corner/ }).click();
    await part('Done unasked').getByText('screen wash filled up').waitFor();
    await page.evaluate(() => {
      history.pushState(null, '', '/sessions/none/booking');
    });
    await page.getByRole('alert').filter({ hasText: 'There is no session none.' }).waitFor();
    expect(sample.complaints).toEqual([]);
  });
});
