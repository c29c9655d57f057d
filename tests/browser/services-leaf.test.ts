import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Locator, Page } from 'playwright-core';
import { Keyboard } from './keyboard.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

describe.skipIf(chromiumHere === null)('services as named lines', () => {
  let sample: SamplePage;
  let page: Page;
  let keys: Keyboard;

  beforeAll(async () => {
    sample = await openSamplePage();
    page = sample.page;
    keys = new Keyboard(page);
    await sample.goTo('Alder', 'Services');
  });
  afterAll(() => sample.close());

  const lines = () => page.getByRole('list', { name: 'Lines' });
  const line = (name: string): Locator => lines().getByRole('listitem').filter({ has: page.getByText(name, { exact: true }) });
  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).waitFor();
  const sheetGone = () => page.getByRole('dialog').waitFor({ state: 'detached' });

  test('say of each line who did it, when and what was found, at home and at a garage', async () => {
    await page.getByText('9 of 12 lines are done.').waitFor();
    await page.getByText('Done by the garage on the corner (6 lines), keeper, at home (6 lines).').waitFor();
    await line('brake fluid').getByText('the garage on the corner · replaced · 1 paper').waitFor();
    await line('air filter').getByText('keeper, at home · replaced').waitFor();
    await line('fuel filter').getByText('nobody has done it').waitFor();
    await line('belt of the alternator').getByText('looked at, not replaced').waitFor();
    await line('spare wheel: pressure').getByText('left undone', { exact: true }).waitFor();
    await line('brake pads and discs').getByText('watch', { exact: true }).waitFor();
    await line('engine oil and filter').getByText('once before').click();
    await line('engine oil and filter').getByText('25 May 2025').waitFor();
    await page.getByRole('region', { name: 'To be watched' }).getByText('look again by 4 Jan 2027').waitFor();
    await page.getByRole('region', { name: 'Done beside it' }).getByText('two front tyres').waitFor();
    await sample.axeAtEverySize('a service');
  });

  test('only what is open is shown on demand', async () => {
    await page.getByLabel('Only what is open').check();
    await expect.poll(() => lines().getByRole('listitem').count()).toBe(3);
    await page.getByLabel('Only what is open').uncheck();
    await expect.poll(() => lines().getByRole('listitem').count()).toBe(12);
  });

  test('an open line is recorded with one press and a found thing is watched from a day on; both are undone at once', async () => {
    await page.getByRole('button', { name: 'Record work on belt of the alternator' }).click();
    const sheet = page.getByRole('dialog');
    await sheet.getByLabel('It was').selectOption('looked at: watch it');
    await sheet.getByLabel('What was found').fill('one crack in a rib');
    await sheet.getByRole('textbox', { name: 'Look again by' }).fill('1 mar 2027');
    await sample.axeAtEverySize('the record of a line');
    await sheet.getByRole('button', { name: 'Record the work' }).click();
    await said('belt of the alternator is recorded, and 1 thing is noted to be looked at again.');
    await sheetGone();
    await page.getByRole('region', { name: 'To be watched' }).getByText('belt of the alternator: one crack in a rib').waitFor();
    await page.getByRole('region', { name: 'To be watched' }).getByText('look again by 1 Mar 2027').waitFor();
    await line('belt of the alternator').getByText('one crack in a rib').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('one crack in a rib').first().waitFor({ state: 'detached' });
  });

  test('a day to look again before the work is refused at its field and nothing is lost', async () => {
    await page.getByRole('button', { name: 'Record work on spare wheel: pressure' }).click();
    const sheet = page.getByRole('dialog');
    await sheet.getByLabel('It was').selectOption('looked at: watch it');
    await sheet.getByLabel('What was found').fill('1.9 bar');
    await sheet.getByRole('textbox', { name: 'Look again by' }).fill('1 jan 2026');
    await sheet.getByRole('button', { name: 'Record the work' }).click();
    await sheet.getByRole('alert').filter({ hasText: 'is before the work itself' }).waitFor();
    await expect.poll(() => sheet.getByRole('textbox', { name: 'Look again by' }).evaluate((field) => field === document.activeElement)).toBe(true);
    await expect.poll(() => sheet.getByLabel('What was found').inputValue()).toBe('1.9 bar');
    await sheet.getByRole('button', { name: 'Cancel' }).click();
    await sheetGone();
  });

  test('all open lines are recorded in one go, each with its own outcome, and a line of one’s own beside', async () => {
    await page.getByRole('button', { name: 'Record the 3 open lines' }).click();
    const sheet = page.getByRole('dialog');
    await expect.poll(() => sheet.getByLabel('Outcome of fuel filter').inputValue()).toBe('replace done');
    await sheet.getByLabel('Where', { exact: true }).selectOption('at a garage');
    await sheet.getByLabel('Name of the garage').fill('the garage on the corner');
    await sheet.getByRole('button', { name: 'Add a line', exact: true }).click();
    await page.keyboard.type('underside rinsed');
    await sheet.getByRole('button', { name: 'Record the work' }).click();
    await sheetGone();
    await page.getByText('All 12 lines are done.').waitFor();
    await page.getByRole('region', { name: 'Done beside it' }).getByText('underside rinsed').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('9 of 12 lines are done.').waitFor();
  });

  test('a car without one says what a service is', async () => {
    await sample.goTo('Ember', 'Services');
    await page.getByText('No service is named yet').waitFor();
    await sample.axeAtEverySize('no service');
  });

  test('a service is named by the keyboard alone, then recorded from one of its lines', async () => {
    await keys.press('Name a service');
    await keys.fill('Its name', 'Before the winter');
    await keys.to('brake fluid');
    await page.keyboard.press('Space');
    await keys.press('Add a line of your own');
    await page.keyboard.type('door seals greased');
    await page.keyboard.press('Enter');
    await page.keyboard.type('washer fluid against frost');
    await sample.axeAtEverySize('the form of a service');
    await keys.press('Name it');
    await said('Before the winter is named.');
    await sheetGone();
    await page.getByText('0 of 3 lines are done.').waitFor();
    await keys.press('Record work on door seals greased');
    await page.getByRole('dialog').waitFor();
    await keys.to(/^It was/);
    await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLSelectElement).value)).toBe('check good');
    await keys.press('Record the work');
    await sheetGone();
    await page.getByText('Of 3 lines one is done.').waitFor();
    await line('door seals greased').getByText('at home · looked at: good').waitFor();
    expect(keys.faults).toEqual([]);
  });

  test('it is changed, taken away, and that is undone', async () => {
    await page.getByRole('button', { name: 'Change this service' }).click();
    const sheet = page.getByRole('dialog');
    await sheet.getByLabel('What is done to brake fluid').selectOption('to be looked at');
    await sheet.getByRole('button', { name: 'Take line 3 out' }).click();
    await sheet.getByRole('textbox', { name: 'Until (empty: it goes on)' }).fill('1 nov 2026');
    await sheet.getByRole('button', { name: 'Save the service' }).click();
    await sheet.getByRole('alert').filter({ hasText: 'is before the first one' }).waitFor();
    await sheet.getByRole('textbox', { name: 'Until (empty: it goes on)' }).fill('31 dec 2026');
    await sheet.getByRole('button', { name: 'Save the service' }).click();
    await sheetGone();
    await page.getByText('Of 2 lines one is done.').waitFor();
    await page.getByText('25 Nov 2026 to 31 Dec 2026').waitFor();
    await page.getByRole('button', { name: 'Change this service' }).click();
    await sheet.getByRole('button', { name: 'Remove this service' }).click();
    await said('Before the winter is removed.');
    await page.getByText('No service is named yet').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('Of 2 lines one is done.').waitFor();
  });

  test('one with forty lines and long names keeps its form', async () => {
    const name = 'The service before the long journey over the mountains with the tent on the roof, as last time';
    const long = Array.from({ length: 40 }, (_, at) => ({ name: `${at + 1}: a line whose name is as long as people write it when they are careful and have the time`, work: 'check' as const }));
    await sample.must('service-plan.set', { id: 'long', car: 'wren', name: name.slice(0, 80), from: '2026-11-01' as never, lines: long });
    await sample.goTo('Wren', 'Services');
    await page.getByText('0 of 40 lines are done.').waitFor();
    await expect.poll(() => lines().getByRole('listitem').count()).toBe(40);
    for (const width of [1920, 1280, 640]) {
      await page.setViewportSize({ width, height: 800 });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      expect(over, `${width} wide`).toBe(0);
    }
    await page.setViewportSize({ width: 1280, height: 800 });
    await page.getByRole('button', { name: 'Record the 40 open lines' }).click();
    await expect.poll(() => page.getByRole('dialog').getByLabel('It was').count()).toBe(40);
    await page.keyboard.press('Escape');
    await sheetGone();
  });

  test('nothing complained', () => expect(sample.complaints).toEqual([]));
});
