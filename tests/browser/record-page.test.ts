import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Keyboard } from './keyboard.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

/** A record from its form to its page, amended and taken back; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('the page of a record', { timeout: 180_000 }, () => {
  let sample: SamplePage;
  let page: Page;
  let keys: Keyboard;

  beforeAll(async () => {
    sample = await openSamplePage();
    page = sample.page;
    keys = new Keyboard(page);
    await sample.must('observation.note', { id: 'squeak', car: 'pip', text: 'a squeak at the rear', date: '2026-11-20' as never });
    await sample.goTo('Pip', 'Care');
  });
  afterAll(() => sample.close());

  const dialog = () => page.getByRole('dialog');
  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).first().waitFor();
  const section = (title: string | RegExp) => page.getByRole('region', { name: title });

  test('is written with who stands for it, what was taken, measured and put right', async () => {
    await page.getByRole('button', { name: 'Record work', exact: true }).first().click();
    await dialog().getByRole('checkbox', { name: 'cabin filter' }).check();
    await dialog().getByRole('checkbox', { name: /^a squeak at the rear/ }).check();
    await dialog().getByRole('button', { name: 'Add a measurement' }).click();
    await dialog().getByLabel('What was measured', { exact: true }).last().selectOption('pad');
    await dialog().getByRole('textbox', { name: 'Value' }).fill('6.5');
    await dialog().getByLabel('Where on the car').selectOption('rear');
    await dialog().getByRole('button', { name: 'Add something from the shelf' }).click();
    await dialog().getByRole('textbox', { name: /^How much/ }).fill('0.2');
    await dialog().getByLabel('Vouched for by').selectOption('digital');
    await dialog().getByLabel('Who stands for it').fill('a neighbour who knows');
    await dialog().getByText('More about it').click();
    await dialog().getByLabel('cabin filter (min)').fill('20');
    await sample.axeAtEverySize('the form of a record');
    await dialog().getByRole('button', { name: 'Record the work' }).click();
    await said(/cabin filter is recorded/);
    expect(await page.getByText('a squeak at the rear').first().isVisible()).toBe(true);
  });

  test('is opened by the keyboard and tells all of it', async () => {
    await keys.press('cabin filter');
    await page.getByRole('heading', { name: '25 Nov 2026: cabin filter', level: 1 }).waitFor();
    for (const text of ['an entry in the digital service record', 'a neighbour who knows', '20 min', '6.5 mm']) await section('What was done').getByText(text).first().waitFor();
    await section(/^Holds 3 of 4/).getByText('Who did it').waitFor();
    await page.getByText('Put right by it: a squeak at the rear, seen on 20 Nov 2026').waitFor();
    await sample.axeAtEverySize('the page of a record');
    expect(keys.faults).toEqual([]);
  });

  test('is amended with its reason by the keyboard; what was written first stays', async () => {
    await keys.press('Amend it');
    await dialog().waitFor();
    await page.keyboard.type('it was me');
    await keys.fill('Done by', 'the keeper');
    await keys.press('Keep the amendment');
    await said('The record is amended.');
    await section('How it was written').getByText('amended: it was me').waitFor();
    await section('How it was written').getByText('the keeper').waitFor();
    await section(/^Holds 4 of 4/).waitFor();
    await sample.axeAtEverySize('an amended record');
    expect(keys.faults).toEqual([]);
  });

  test('an amendment without a reason, or of nothing, is refused in the form', async () => {
    await page.getByRole('button', { name: 'Amend it' }).click();
    await dialog().getByRole('button', { name: 'Keep the amendment' }).click();
    await dialog().getByRole('alert').filter({ hasText: 'Say why it is amended' }).waitFor();
    await dialog().getByLabel('Why it is amended').fill('x');
    await dialog().getByRole('button', { name: 'Keep the amendment' }).click();
    await dialog().getByRole('alert').filter({ hasText: 'Nothing is different' }).waitFor();
    await page.keyboard.press('Escape');
  });

  test('is taken back, and what it had settled is open again', async () => {
    await page.getByRole('button', { name: 'Take it back' }).click();
    await dialog().getByLabel('Why it is taken back').fill('another car');
    await dialog().getByRole('button', { name: 'Take the record back' }).click();
    await said('cabin filter is taken back.');
    await page.getByRole('heading', { name: 'Pip', level: 1 }).waitFor();
    await page.locator('#observation-squeak').getByRole('button').first().waitFor();
    expect(sample.complaints).toEqual([]);
  });
});
