import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeFaults } from './axe-faults.ts';
import { Keyboard } from './keyboard.ts';
import { chromiumHere } from './launch-chromium.ts';
import { laySample } from '../sample-build.ts';
import { openServedPage, type ServedPage } from './served-page.ts';
import { soundAtEverySize } from './sound-at-every-size.ts';

const THIN = '\u202f';

/** The leaf of distance and use on the sample, by mouse and by keyboard; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('distance and use of a car of the sample', () => {
  let served: ServedPage;
  let page: Page;
  let keys: Keyboard;

  beforeAll(async () => {
    served = await openServedPage({ fill: laySample });
    page = served.page;
    keys = new Keyboard(page);
  });
  afterAll(() => served.close());

  const button = (name: string | RegExp) => page.getByRole('button', { name });
  const region = (name: string) => page.getByRole('region', { name });
  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).waitFor();
  const undo = async () => {
    await button('Undo').click();
    await said('Undone.');
  };
  const focusedLabel = () => page.evaluate(() => [...((document.activeElement as HTMLInputElement).labels ?? [])].map((label) => label.textContent).join(''));
  async function openLeaf(car: string): Promise<void> {
    await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: 'Car' }).click();
    await page.getByRole('navigation', { name: 'Cars' }).getByRole('link', { name: car }).click();
    await page.getByRole('heading', { name: car, level: 1 }).waitFor();
    await page.getByRole('link', { name: 'Distance and use' }).click();
    await page.getByRole('heading', { name: 'Track record' }).waitFor();
  }
  test('a reading in doubt shows in its lane, and is answered there with a new instrument; it is undone', async () => {
    await button('1 reading of Heron in doubt').press('Enter');
    const lane = page.locator('[data-lane]').filter({ has: page.getByRole('heading', { name: 'Heron', exact: true }) });
    const question = lane.getByRole('group', { name: /^8476 km on 9 Nov 2026: It is lower/ });
    await question.getByText('It does not agree with 57').waitFor();
    await question.getByRole('button', { name: 'A new instrument since' }).press('Enter');
    await expect.poll(focusedLabel).toBe('The old one last showed');
    await page.keyboard.type('12');
    await page.keyboard.press('Enter');
    await question.getByRole('alert').filter({ hasText: 'does not fit the readings' }).waitFor();
    await page.keyboard.press('Control+A');
    await page.keyboard.press('Backspace');
    await page.keyboard.press('Enter');
    await said('Heron: counted on a new instrument from that day.');
    await expect.poll(() => button('1 reading of Heron in doubt').count()).toBe(0);
    await undo();
    await button('1 reading of Heron in doubt').waitFor();
  });

  test('the leaf has its drawing in words and in a table, and no fault at any size', async () => {
    await openLeaf('Heron');
    // By hand: 57 155 shown, and the car had gone 148 388 when the present instrument showed 4.
    await page.getByRole('img', { name: /^40 readings, the last 205.539 km on 12 Sep 2026\. By Nov 2027 it will have gone/ }).waitFor();
    await expect.poll(() => page.getByRole('table', { name: 'What its instrument will show' }).getByRole('row').count()).toBe(5);
    await soundAtEverySize(page, 'the leaf');
    for (const summary of await page.locator('details summary').all()) await summary.press('Enter');
    await page.getByRole('table', { name: 'Readings against the range foreseen for them' }).getByText('inside').first().waitFor();
    await soundAtEverySize(page, 'the track record unfolded');
  });

  test('every control is reached by Tab, in order, and seen', async () => {
    await page.getByRole('heading', { level: 1 }).focus();
    await keys.to('Add an allowance');
    expect(keys.faults).toEqual([]);
  });

  test('all readings are listed as typed, with what became of them', async () => {
    const readings = region('Readings');
    await expect.poll(() => readings.getByRole('row').count()).toBe(11);
    await readings.getByRole('button', { name: /^Show all \d+$/ }).click();
    await expect.poll(() => readings.getByRole('row').count()).toBe(42);
    await readings.getByRole('row', { name: `9 Nov 2026 8476 km the keeper set aside Read in the dark.` }).waitFor();
    await readings.getByRole('link', { name: '2026-01-19 certificate, Heron.pdf' }).waitFor();
    await readings.getByRole('button', { name: 'Show the latest' }).click();
  });

  const question = () => region('Readings').getByRole('group', { name: /8476 km on 9 Nov 2026/ });

  test.each([
    { answer: 'It was 58', row: /^9 Nov 2026 8476 km the keeper struck out/, told: /^Heron: 58.476 km recorded instead/ },
    { answer: 'It is right', row: /^9 Nov 2026 8476 km the keeper counts, confirmed/, told: 'Heron: the reading stands as typed.' },
    { answer: 'Strike out', row: /^9 Nov 2026 8476 km the keeper struck out/, told: 'Heron: the reading counts for nothing now' },
  ])('a doubtful reading is answered: $answer', async ({ answer, row, told }) => {
    await question().getByRole('button', { name: answer }).first().click();
    await said(told);
    await region('Readings').getByRole('row', { name: row }).waitFor();
    await expect.poll(() => question().count()).toBe(0);
    await undo();
    await question().waitFor();
  });

  test('with another value, refused where it is none', async () => {
    await question().getByRole('button', { name: 'Another value' }).press('Enter');
    await expect.poll(focusedLabel).toBe('The right value');
    await page.keyboard.type('half');
    await page.keyboard.press('Enter');
    await question().getByRole('alert').filter({ hasText: 'Write a number' }).waitFor();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('58 500');
    await page.keyboard.press('Enter');
    await said(`Heron: 58${THIN}500 km recorded instead.`);
    await undo();
  });

  test('with the other one being the wrong one', async () => {
    await question().getByRole('button', { name: 'The other one is wrong' }).click();
    await page.getByLabel(/^Instead of 57.155 km on 12 Sep 2026 it was/).fill('8100');
    await button('Correct the other one').click();
    await said(/^Heron: 8476 km stands; the other one, 57.155 km/);
    await region('Readings').getByRole('row', { name: /^12 Sep 2026 57.155 km the keeper struck out/ }).waitFor();
    await undo();
    await question().waitFor();
  });

  test('what an old instrument last showed is put right; a value that does not fit wants a word', async () => {
    await button('Put right what the instrument replaced 25 Jun 2019 last showed').click();
    await expect.poll(focusedLabel).toBe('The old one last showed');
    await page.keyboard.type('90 000');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').filter({ hasText: 'does not fit the readings' }).waitFor();
    await page.getByRole('dialog').waitFor();
    expect(await axeFaults(page)).toEqual([]);
    await page.getByLabel('The old one last showed').fill('148 400');
    await button('Put it right').click();
    await said('is put right');
    await region('Readings').getByText(/when the car had gone 148.400 km\.$/).waitFor();
    await undo();
  });

  test('a lay-up is begun, ended, changed and taken away', async () => {
    await openLeaf('Pip');
    const rest = region('Rest and changes of use');
    await keys.press('Lay it up');
    await keys.fill(/^First day of rest/, '20/11/2026');
    await soundAtEverySize(page, 'the form of a lay-up');
    await keys.press('Record the lay-up');
    await said('Pip is laid up until you say otherwise.');
    await page.getByText('Laid up since 20 Nov 2026, and nobody has said until when.').waitFor();
    await rest.getByRole('button', { name: 'Back on the road' }).click();
    await expect.poll(() => page.getByRole('textbox', { name: 'Last day of rest' }).inputValue()).toBe('25 Nov 2026');
    await button('Record the lay-up').click();
    await rest.getByText('20 Nov 2026 to 25 Nov 2026').waitFor();
    await button('Change the lay-up 20 Nov 2026 to 25 Nov 2026').click();
    await page.getByRole('textbox', { name: 'Last day of rest' }).fill('1/11/2026');
    await button('Record the lay-up').click();
    await page.getByRole('dialog').getByRole('alert').filter({ hasText: 'cannot end on 1 Nov 2026' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await button('Remove the lay-up 20 Nov 2026 to 25 Nov 2026').click();
    await said('The lay-up is taken back.');
    await expect.poll(() => rest.getByText('20 Nov 2026 to').count()).toBe(0);
    await undo();
    await rest.getByText('20 Nov 2026 to 25 Nov 2026').waitFor();
  });

  test('a change of use asks for a reading, in a unit of its own', async () => {
    await button('Its use changed').click();
    await page.getByRole('textbox', { name: 'Used otherwise from' }).fill('15/11/2026');
    await page.getByLabel('Distance', { exact: true }).fill('20 000');
    await page.getByLabel('Unit').selectOption('km');
    await button('Record the change of use').click();
    await region('Rest and changes of use').getByText(`from 15 Nov 2026, 20${THIN}000 km a year expected`).waitFor();
    await page.getByText('It is used otherwise since 15 Nov 2026, and nothing was read since. Enter a reading.').waitFor();
    await button('Remove the change of use from 15 Nov 2026').click();
    await said('The change of use is taken back.');
  });

  test('an expectation far off is set aside with a note', async () => {
    await button('What you expect').click();
    await page.getByLabel('Distance', { exact: true }).fill('60 000');
    await button('Expect this').click();
    await page.getByText(new RegExp(`^You expect 60.000 mi a year, but the readings say about .* Your figure was set aside`)).waitFor();
    await undo();
    await expect.poll(() => page.getByText('Your figure was set aside').count()).toBe(0);
  });

  test('a distance allowance tells when it will be passed; it is changed and removed', async () => {
    const allowances = region('Distance allowances');
    await keys.press('Add an allowance');
    await keys.fill('Name', 'policy of June');
    await keys.fill(/^Distance allowed/, '8000');
    await keys.fill(/^First day/, '1/6/2026');
    await soundAtEverySize(page, 'the form of an allowance');
    await keys.press('Record the allowance');
    const row = allowances.getByRole('listitem').filter({ hasText: 'policy of June' });
    await row.getByText(/8000 mi a year · 1 Jun 2026 to 31 May 2027/).waitFor();
    await row.getByText(/^About \d{4} mi used so far, \d{4} mi left\./).waitFor();
    await row.getByText(/^As the car is used now, the 8000 mi allowed will be passed .*2027.*, before 31 May 2027/).waitFor();
    await button('Change the allowance policy of June').click();
    await page.getByLabel('Distance allowed').fill('30 000');
    await button('Record the allowance').click();
    await row.getByText(/^The 30.000 mi allowed will do until 31 May 2027/).waitFor();
    await soundAtEverySize(page, 'allowances');
    await button('Remove the allowance policy of June').click();
    await said('policy of June is removed.');
    await expect.poll(() => row.count()).toBe(0);
  });

  test('an instrument changed from miles to kilometres: readings stand as typed, and the form knows the unit of the day', async () => {
    await region('Readings').getByRole('button', { name: 'Enter a reading' }).click();
    await page.getByLabel('The odometer shows').fill('40');
    await page.getByLabel('Unit', { exact: true }).selectOption('km');
    await page.getByLabel('This is the first value of a replaced instrument').check();
    await expect.poll(() => page.getByLabel('Unit of the old one').inputValue()).toBe('mi');
    await page.getByRole('textbox', { name: 'It last showed' }).fill('34 100');
    await soundAtEverySize(page, 'the form of a reading');
    await button('Record the reading').click();
    await region('Readings').getByRole('row', { name: /^25 Nov 2026 40 km the keeper counts/ }).waitFor();
    await region('Readings').getByRole('row', { name: /^12 Nov 2026 33.856 mi the keeper counts/ }).waitFor();
    await region('Readings').getByText(/^Instrument replaced 25 Nov 2026: the new one began at 40 km when the car had gone 54.879 km\.$/).waitFor();
    await region('Readings').getByRole('button', { name: 'Enter a reading' }).click();
    await expect.poll(() => page.getByLabel('Unit', { exact: true }).inputValue()).toBe('km');
    await page.getByRole('textbox', { name: 'On', exact: true }).fill('20/11/2026');
    await expect.poll(() => page.getByLabel('Unit', { exact: true }).inputValue()).toBe('mi');
  });

  test('one that is set aside is asked about at once, with what it contradicts', async () => {
    await page.getByLabel('The odometer shows').fill('3400');
    await button('Record the reading').click();
    const asked = page.getByRole('dialog').getByRole('group', { name: /^3400 mi on 20 Nov 2026/ });
    await asked.getByText(/It does not agree with 33.856 mi on 12 Nov 2026/).waitFor();
    await asked.getByRole('button', { name: 'The other one is wrong' }).waitFor();
    await soundAtEverySize(page, 'the question');
    await asked.getByRole('button', { name: 'Strike out' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await region('Readings').getByRole('row', { name: /^20 Nov 2026 3400 mi the keeper struck out/ }).waitFor();
  });

  test('no step of the keyboard was out of order, and nothing complained', () => {
    expect(keys.faults).toEqual([]);
    expect(served.complaints).toEqual([]);
  });
});
