import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeFaults } from './axe-faults.ts';
import { Keyboard } from './keyboard.ts';
import { chromiumHere } from './launch-chromium.ts';
import { laySample } from '../sample-build.ts';
import { openServedPage, type ServedPage } from './served-page.ts';
import { soundAtEverySize } from './sound-at-every-size.ts';

const THIN = '\u202f';

/** Wear and wheels of the sample's cars; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('the leaf of wear and wheels', () => {
  let served: ServedPage;
  let page: Page;
  let keys: Keyboard;

  beforeAll(async () => {
    served = await openServedPage({ fill: laySample });
    page = served.page;
    keys = new Keyboard(page);
  });
  afterAll(() => served.close());

  const sheet = (title: string) => page.getByRole('region', { name: title, exact: true });
  const series = (title: string, name: string | RegExp) => sheet(title).getByRole('listitem').filter({ has: page.getByRole('heading', { level: 3, name, exact: typeof name === 'string' }) });
  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).waitFor();
  /** Its newest value, in large; the list of measurements may show the same. */
  const newest = (one: Locator, value: string) => one.getByText(value, { exact: true }).first().waitFor();
  const dialog = () => page.getByRole('dialog');
  const closed = () => dialog().waitFor({ state: 'detached' });

  async function leafOf(car: string): Promise<void> {
    await page.getByRole('navigation', { name: 'Cars' }).getByRole('link', { name: car, exact: true }).or(page.getByRole('link', { name: car, exact: true })).first().click();
    await page.getByRole('heading', { name: car, level: 1 }).waitFor();
    await page.getByRole('link', { name: 'Wear and wheels' }).click();
    await sheet('Wheels').waitFor();
  }

  test('shows what wears, towards which limit, and tells the chart in words', async () => {
    await page.getByRole('link', { name: 'Car', exact: true }).click();
    await leafOf('Pip');
    const b = series('Tread', 'B, rear right');
    await newest(b, '3.8 mm');
    await b.getByText(/^Jan 2027 to Jan 2028, likely Aug 2027$/).waitFor();
    await b.getByText(`It wears by 1.2 mm every 10${THIN}000 mi towards its limit of 3 mm.`).waitFor();
    await b.getByText('Limit 3 mm, of new tyres').waitFor();
    await b.getByText('Passes the least tread of each law: 1.6 mm and 2/32 in.').waitFor();
    await b.getByRole('img', { name: 'Chart. 4 measurements, from 6.5 mm in May 2024 to 3.8 mm in Nov 2026. The line through them reaches 3 mm about Aug 2027.' }).waitFor();
    await series('Brake pads', 'rear left').getByText('not enough measurements').waitFor();
    await soundAtEverySize(page, "Pip's leaf");
  });

  test('what contradicts itself, passes one law alone, lies by, or has no limit says so', async () => {
    await leafOf('Wren');
    await series('Brake pads', 'front left').getByText('It got better, which wear does not do: 5.2 mm on 9 Apr 2025, then 7.6 mm on 9 Apr 2026.').waitFor();
    await leafOf('Heron');
    const spare = series('Tread', 'spare');
    await newest(spare, '2/32 in');
    await spare.getByText('Fails 1.6 mm (United Kingdom, European Union).').waitFor();
    await spare.getByText('Passes 2/32 in (United States).').waitFor();
    await sheet('Wheels').getByText('week 14 of 1987 or 1997 (code 147): three digits leave the decade open, so 29 to 40 years old').waitFor();
    await leafOf('Ember');
    await sheet('Tread').getByText('4 wheels off the car').click();
    await series('Tread', 'summer 1, off the car').getByText('off the road', { exact: true }).waitFor();
    await sheet('Battery voltage').getByText('No limit is set').waitFor();
    await soundAtEverySize(page, "Ember's leaf");
  });

  test('four wheels are measured in one entry by the keyboard: four values and Enter', async () => {
    await leafOf('Pip');
    await keys.press('Measure tread');
    await dialog().getByLabel('C, front left').waitFor();
    await soundAtEverySize(page, 'the form of measurements');
    await dialog().getByLabel('C, front left').focus();
    for (const value of ['4.7', '4,8', '3.9']) {
      await page.keyboard.type(value);
      await page.keyboard.press('Tab');
    }
    await page.keyboard.type('3.7');
    await page.keyboard.press('Enter');
    await said('4 measurements are kept.');
    await closed();
    await newest(series('Tread', 'D, front right'), '4.8 mm');
    await series('Tread', 'B, rear right').getByText('5 measurements').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await series('Tread', 'B, rear right').getByText('4 measurements').waitFor();
    await newest(series('Tread', 'D, front right'), '4.9 mm');
  });

  test('across a tread the worst counts; the rest stays to be seen', async () => {
    await sheet('Tread').getByRole('button', { name: 'Measure tread' }).click();
    await dialog().getByLabel('At the inner edge, in the middle and at the outer edge').check();
    const wheel = dialog().getByRole('group', { name: 'A, rear left' });
    await wheel.getByLabel('inner edge').fill('3.2');
    await wheel.getByLabel('middle').fill('3.9');
    await dialog().getByRole('button', { name: 'Keep the measurements' }).click();
    await said('2 measurements are kept.');
    const a = series('Tread', 'A, rear left');
    await newest(a, '3.2 mm');
    await a.getByText('6 measurements').click();
    await a.getByRole('row', { name: /3\.9 mm/ }).getByText(/^a worse one of that day counts, .*middle$/).waitFor();
    expect(await axeFaults(page)).toEqual([]);
  });

  test('a refused value keeps what was typed and points at its field', async () => {
    await sheet('Tread').getByRole('button', { name: 'Measure tread' }).click();
    await dialog().getByLabel('D, front right').fill('61');
    await dialog().getByLabel('B, rear right').fill('3.6');
    await dialog().getByRole('button', { name: 'Keep the measurements' }).click();
    await dialog().getByRole('alert').filter({ hasText: '61 mm cannot be right for tread.' }).waitFor();
    await expect.poll(() => dialog().getByLabel('D, front right').evaluate((field) => field === document.activeElement)).toBe(true);
    await expect.poll(() => dialog().getByLabel('B, rear right').inputValue()).toBe('3.6');
    await page.keyboard.press('Escape');
    await closed();
    await series('Tread', 'B, rear right').getByText('4 measurements').waitFor();
  });

  test('the kind decides places and units; something else has a name and a limit of its own', async () => {
    await page.getByRole('button', { name: 'Enter measurements' }).click();
    await dialog().getByRole('button', { name: 'Start over' }).click();
    await dialog().getByLabel('What was measured').selectOption('battery-voltage');
    await expect.poll(() => dialog().getByLabel('In', { exact: true }).count()).toBe(0);
    await dialog().getByLabel('What was measured').selectOption('other');
    await dialog().getByLabel('Its name').fill('play of the clutch pedal');
    await dialog().getByLabel('Value', { exact: true }).fill('12');
    await dialog().getByRole('button', { name: 'Keep the measurements' }).click();
    await said('1 measurement is kept.');
    const play = series('Something else', 'play of the clutch pedal');
    await play.getByRole('button', { name: /^Limit of/ }).click();
    await dialog().getByLabel('The last value that still passes').fill('25');
    await dialog().getByLabel('On the way to its limit the value').selectOption('yes');
    await soundAtEverySize(page, 'the form of a limit');
    await dialog().getByRole('button', { name: 'Set the limit' }).click();
    await said('The limit is set.');
    await play.getByText('Limit 25 mm, set for all of its kind').waitFor();
    await play.getByRole('button', { name: /^Limit of/ }).click();
    await dialog().getByRole('button', { name: 'Take back 25 mm' }).click();
    await play.getByText('No limit is set').waitFor();
  });

  test('a measurement is corrected, struck out and counted again', async () => {
    await leafOf('Wren');
    const left = series('Brake pads', 'front left');
    await left.getByText('4 measurements').click();
    await left.getByRole('button', { name: 'Strike out 7.6 mm of 9 Apr 2026' }).click();
    await said('7.6 mm of 9 Apr 2026 counts for nothing now; it stays to be seen.');
    await left.getByRole('row', { name: /7\.6 mm/ }).getByText(/^struck out/).waitFor();
    await newest(left, '5.2 mm');
    await left.getByRole('button', { name: 'Count 7.6 mm of 9 Apr 2026 again' }).click();
    await left.getByText('the measurements contradict each other').waitFor();
    await left.getByRole('button', { name: 'Correct 7.6 mm of 9 Apr 2026' }).click();
    await dialog().getByLabel('Value', { exact: true }).fill('4.6');
    expect(await axeFaults(page)).toEqual([]);
    await dialog().getByRole('button', { name: 'Keep the correction' }).click();
    await said('The measurement is corrected.');
    await left.getByText('the measurements contradict each other').waitFor({ state: 'detached' });
    await newest(left, '4.6 mm');
  });

  test('a law is taken as the limit of one wheel alone', async () => {
    await leafOf('Pip');
    const c = series('Tread', 'C, front left');
    await c.getByRole('button', { name: 'Limit of tread, C, front left' }).click();
    await dialog().getByText('Now 3 mm, from the item new tyres.').waitFor();
    await dialog().getByLabel('Taken from').selectOption('tread-2-32-in');
    await dialog().getByRole('button', { name: 'Set the limit' }).click();
    await said('The limit is set.');
    await c.getByText('Limit 2/32 in, set for this one alone: 2/32 in (United States)').waitFor();
    await series('Tread', 'B, rear right').getByText('Limit 3 mm, of new tyres').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await c.getByText('Limit 3 mm, of new tyres').waitFor();
  });

  test('wheels are moved front to rear in one entry by the keyboard, and moved back by undoing', async () => {
    await keys.press('Move wheels');
    await dialog().waitFor();
    await keys.press('Front to rear');
    await soundAtEverySize(page, 'the form that moves wheels');
    await keys.press('Move them');
    await said('4 wheels are moved.');
    await closed();
    await series('Tread', 'C, rear left').waitFor();
    const c = sheet('Wheels').getByRole('listitem').filter({ has: page.getByRole('heading', { name: 'C', exact: true }) });
    await c.getByText('rear left since 25 Nov 2026').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await c.getByText('front left since 30 Jun 2026').waitFor();
  });

  test('the other set goes on in one entry, and two wheels in one place are refused', async () => {
    await leafOf('Ember');
    await page.getByRole('button', { name: 'Move wheels' }).click();
    await dialog().getByRole('button', { name: 'The other set' }).click();
    await dialog().getByLabel('summer 1').selectOption('front-right');
    await dialog().getByRole('button', { name: 'Move them' }).click();
    await dialog().getByRole('alert').filter({ hasText: 'two wheels would be front right' }).waitFor();
    await dialog().getByRole('button', { name: 'The other set' }).click();
    await dialog().getByRole('button', { name: 'Move them' }).click();
    await said('8 wheels are moved.');
    await series('Tread', 'summer 3, rear left').waitFor();
    await sheet('Tread').getByText('4 wheels off the car').waitFor();
  });

  test('wheels of a car that has none are added with few keys: each begins where the one before ended', async () => {
    await leafOf('Wren');
    await page.getByRole('button', { name: 'Add a wheel' }).click();
    await dialog().getByLabel('Tyre date code').fill('9921');
    await dialog().getByRole('button', { name: 'Add the wheel' }).click();
    await dialog().getByRole('alert').filter({ hasText: 'There is no week 99' }).waitFor();
    await dialog().getByLabel('Tyre date code').fill('2612');
    await soundAtEverySize(page, 'the form of a wheel');
    await dialog().getByRole('button', { name: 'Add the wheel' }).click();
    await closed();
    for (const [before, name] of [['A', 'B'], ['B', 'C'], ['C', 'D']] as const) {
      await sheet('Wheels').getByRole('heading', { name: before, exact: true }).waitFor();
      await page.getByRole('button', { name: 'Add a wheel' }).click();
      await expect.poll(() => dialog().getByLabel('Its mark').evaluate((field) => field === document.activeElement)).toBe(true);
      await page.keyboard.press('Enter');
      await said(`Wheel ${name} is added.`);
      await closed();
    }
    const d = sheet('Wheels').getByRole('listitem').filter({ has: page.getByRole('heading', { name: 'D', exact: true }) });
    await d.getByText('rear right since 25 Nov 2026').waitFor();
    await d.getByText('tyre made in week 26 of 2012 (code 2612), 14 years 4 months old').waitFor();
  });

  test('an item is measured, and wear wins over its interval in its row and in the yard', async () => {
    await page.getByRole('link', { name: 'Alder', exact: true }).click();
    await page.getByRole('row', { name: /^new front brake pads/ }).getByText(/^Pad, front right: was 4 mm on 2 Jun 2026/).waitFor();
    await page.getByRole('button', { name: 'Add an item' }).click();
    await dialog().getByLabel('What is cared for').fill('front tyres');
    await dialog().getByLabel('Every so many months').fill('240');
    await dialog().getByLabel('Before these records').selectOption('never-done');
    await dialog().getByLabel('What is measured of it').selectOption('tread');
    await dialog().getByLabel('The last value that still passes').fill('many');
    await dialog().getByLabel('front left').check();
    await dialog().getByRole('button', { name: 'Add the item' }).click();
    await dialog().getByRole('alert').filter({ hasText: 'Write a number' }).waitFor();
    await dialog().getByLabel('The last value that still passes').fill('5.5');
    expect(await axeFaults(page)).toEqual([]);
    await dialog().getByRole('button', { name: 'Add the item' }).click();
    await closed();
    await page.getByRole('row', { name: /^front tyres/ }).getByText(/^Wear comes first: tread, front left, was 6\.6 mm on 2 Jun 2026/).waitFor();
    await page.getByRole('link', { name: 'Yard', exact: true }).click();
    await page.getByRole('region', { name: 'What the marks mean' }).getByText('notched edge: by measured wear').waitFor();
    await page.getByRole('button', { name: 'Unfold all lanes' }).click();
    await page.getByRole('link', { name: /^new front brake pads, soon\. Oct 2026 to May 2027, likely Jan 2027\. Pad, front right/ }).waitFor();
  });

  test('kept the focus visible, on the screen and in order, and nothing complained', () => {
    expect(keys.faults).toEqual([]);
    expect(served.complaints).toEqual([]);
  });
});
