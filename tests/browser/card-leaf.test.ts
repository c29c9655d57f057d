import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Locator, Page } from 'playwright-core';
import { KNOWN_FIGURES } from '../../shared-core/fleet/known-figures.ts';
import { must } from '../../shared-core/result/assert.ts';
import { Keyboard } from './keyboard.ts';
import { chromiumHere } from './launch-chromium.ts';
import { printedPages, printedText } from './printed-page.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

/** One red dot. */
const PICTURE = Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==', 'base64');
/** Below this, in points, nothing is read at arm's length with ease. Common practice, no source. */
const LEAST_TYPE = 9;
const MARGIN = 20;

describe.skipIf(chromiumHere === null)('the data card', () => {
  let sample: SamplePage;
  let page: Page;
  let keys: Keyboard;

  beforeAll(async () => {
    sample = await openSamplePage();
    page = sample.page;
    keys = new Keyboard(page);
    await sample.goTo('Pip', 'Data card');
  });
  afterAll(() => sample.close());

  const row = (name: string): Locator => page.getByRole('listitem').filter({ has: page.getByRole('button', { name: new RegExp(`^(Change|Enter) ${name}$`) }) });
  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).waitFor();
  const focusedLabel = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? (document.activeElement as HTMLInputElement | null)?.labels?.[0]?.textContent ?? '');
  const openForm = () => page.getByRole('form').getByRole('heading').textContent();

  test('shows each figure in its unit and in others, with where it stands', async () => {
    await expect.poll(() => page.getByText('figures entered').first().textContent()).toBe('38 figures entered, 8 not yet, 1 without a source.');
    await row('Cold pressure, front').getByText('2.3 bar').waitFor();
    await row('Cold pressure, front').getByText('= 33.4 psi, 230 kPa').waitFor();
    await row('Cold pressure, front').getByRole('link', { name: 'Sample sheet of tyre pressures, Pip.pdf' }).waitFor();
    await row('Engine oil, with filter').getByText('sample handbook, page 212').waitFor();
    await row('Brake fluid for a change').getByText('no source yet').waitFor();
    await row('Where the locking-nut key is').getByText('in a blue bag').waitFor();
    await row('Gearbox oil').getByText('not entered').waitFor();
    await row('Gearbox oil').getByText('A job sheet cannot say how much to fill in.').waitFor();
    await sample.axeAtEverySize('the card');
  });

  test('an unlikely torque is asked about and stands; the answer is one press and is undone', async () => {
    const question = page.getByRole('group', { name: /11 N·m is little for M12x1\.5: .*Was it 11 kgf·m\?/ });
    await question.getByRole('button', { name: 'I have compared it: Wheel bolts or nuts' }).click();
    await said('Wheel bolts or nuts stands as it is printed.');
    await question.waitFor({ state: 'detached' });
    await row('Wheel bolts or nuts').getByText('compared with its source').waitFor();
    await expect.poll(focusedLabel).toBe('Change Wheel bolts or nuts');
    await page.getByRole('button', { name: 'Undo' }).click();
    await question.waitFor();
    await question.getByRole('button', { name: 'Correct it: Wheel bolts or nuts' }).click();
    await page.getByLabel('Unit', { exact: true }).selectOption('kgf·m');
    await page.keyboard.press('Enter');
    await row('Wheel bolts or nuts').getByText('= 108 N·m, 79.6 lbf·ft').waitFor();
    await expect.poll(() => page.getByRole('group', { name: /is little for/ }).count()).toBe(0);
  });

  test('a figure is taken off the card, and that is undone', async () => {
    await page.getByRole('button', { name: 'Change Fuel' }).click();
    await page.getByRole('button', { name: 'Remove it from the card' }).click();
    await said('Fuel is off the card.');
    await row('Fuel').getByText('not entered').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await row('Fuel').getByText('unleaded').waitFor();
  });

  test('what is no number is refused in its row and stays; a paper is kept with it', async () => {
    await page.getByRole('button', { name: 'Enter Cold pressure, spare wheel' }).click();
    await page.getByLabel('Value').fill('about 2');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByRole('alert').filter({ hasText: 'Write a number, such as 4.1.' }).waitFor();
    await expect.poll(() => page.getByLabel('Value').inputValue()).toBe('about 2');
    await page.getByText('More about it').click();
    await sample.axeAtEverySize('the form of a figure');
    await page.locator('input[type=file]').setInputFiles({ name: 'door.png', mimeType: 'image/png', buffer: PICTURE });
    await page.getByLabel('Value').fill('4,2');
    await page.getByLabel('Value').press('Enter');
    await row('Cold pressure, spare wheel').getByText('4.2 bar').waitFor();
    await row('Cold pressure, spare wheel').getByRole('link', { name: 'door.png' }).waitFor();
    await page.keyboard.press('Escape');
  });

  test('a figure of one’s own is added, changed and counted', async () => {
    await page.getByRole('button', { name: 'Add a figure of your own' }).click();
    await page.getByLabel('What it is').fill('Width with mirrors, for the lane with the posts at the ferry, which is narrower than it looks');
    await page.getByLabel('Value').fill('1.98');
    await page.getByLabel('Unit', { exact: true }).selectOption('in');
    await page.keyboard.press('Enter');
    await page.locator('#screen').getByText('1.98 in').waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Add a figure of your own');
    await page.getByRole('button', { name: /^Change Width with mirrors/ }).click();
    await page.getByLabel('Unit', { exact: true }).selectOption('in words');
    await page.getByLabel('Value').fill('1.98 m');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.locator('#screen').getByText('1.98 m', { exact: true }).waitFor();
    await page.getByText(/^40 figures entered/).waitFor();
  });

  test('by the keyboard alone, one row after the other', async () => {
    await sample.goTo('Ember', 'Data card');
    await page.getByText('The car’s own figures, each entered once').waitFor();
    await keys.press('Fill in what is missing');
    await expect.poll(openForm).toBe('Coolant');
    await page.keyboard.type('7.5');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.type('sample handbook, page 90');
    await page.keyboard.press('Enter');
    await expect.poll(openForm).toBe('Coolant specification');
    await expect.poll(focusedLabel).toBe('Value');
    await page.keyboard.press('Enter');
    await expect.poll(openForm).toBe('Brake fluid for a change');
    await row('Coolant').getByText('= 7.93 US qt, 13.2 imp pt').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(focusedLabel).toBe('Enter Brake fluid for a change');
  });

  test('a question met on the way is answered, and the way goes on', async () => {
    await keys.press('Enter Wheel bolts or nuts');
    await keys.fill('Value', '12');
    await keys.fill('Thread', 'm14 x 1,5');
    await page.keyboard.press('Enter');
    await expect.poll(focusedLabel).toBe('I have compared it: Wheel bolts or nuts');
    await row('Wheel bolts or nuts').getByText('12 N·m (M14x1.5)').waitFor();
    await page.keyboard.press('Enter');
    await expect.poll(openForm).toBe('Jacking points');
    await page.keyboard.press('Escape');
    expect(keys.faults).toEqual([]);
  });

  describe.each(['A4', 'Letter'] as const)('printed on %s', (format) => {
    test('the fullest card of the sample is one page, with its car, its date and only what is entered', async () => {
      await sample.goTo('Pip', 'Data card');
      await row('Engine oil, with filter').getByText('4.1 L').waitFor();
      const pages = await printedPages(page, format);
      expect(pages).toHaveLength(1);
      const printed = must(pages[0], 'page');
      const text = printedText(printed);
      for (const part of ['Data card of Pip', 'small turbo petrol hatch', '25 November 2026', '4.1 L', 'sample handbook, page 212', 'in a blue bag', 'CR2032', 'no source yet']) expect(text).toContain(part);
      for (const part of ['Change', 'not entered', 'Leave the sample', 'Data card of Alder']) expect(text).not.toContain(part);
      for (const piece of printed.pieces) {
        expect(piece.x, piece.text).toBeGreaterThan(MARGIN);
        expect(piece.x + piece.width, piece.text).toBeLessThan(printed.width - MARGIN);
        expect(piece.y, piece.text).toBeGreaterThan(MARGIN);
        expect(piece.y, piece.text).toBeLessThan(printed.height - MARGIN);
      }
      expect(must(printed.pieces.find((piece) => piece.text.includes('4.1 L')), 'value').size).toBeGreaterThanOrEqual(LEAST_TYPE);
    });

    test('an empty card is a page of lines to fill in', async () => {
      await sample.goTo('Heron', 'Data card');
      await page.getByText('The car’s own figures, each entered once').waitFor();
      const pages = await printedPages(page, format);
      expect(pages).toHaveLength(1);
      const text = printedText(must(pages[0], 'page'));
      for (const part of ['Data card of Heron', 'Not known yet', 'Engine oil, with filter', 'Least thickness of the brake linings']) expect(text).toContain(part);
    });
  });

  test('a card with every figure and as long as can be still prints whole, in smaller type, or says that it takes more pages', async () => {
    await page.getByRole('link', { name: 'Settings' }).click();
    for (const { key } of KNOWN_FIGURES.filter((figure) => figure.kind === 'text' && figure.onlyFor === null)) {
      await sample.must('card.set', { car: 'pip', key, value: `a value of ${key} ${'that goes on and on '.repeat(3)}`, source: 'sample handbook, page 100', note: 'A note of some length, as one writes it.' });
    }
    await sample.goTo('Pip', 'Data card');
    await row('Fuel').getByText('a value of fuel').waitFor();
    const size = () => page.evaluate(() => Number.parseFloat(document.querySelector<HTMLElement>('[data-card-sheet] > div')?.style.fontSize ?? '0'));
    await expect.poll(size).toBeLessThan(LEAST_TYPE);
    expect(await printedPages(page, 'A4')).toHaveLength(1);
    expect(await printedPages(page, 'Letter')).toHaveLength(1);
    expect(await page.getByText('This card is too long for one page').count()).toBe(0);
    await page.getByRole('link', { name: 'Settings' }).click();
    for (const at of Array.from({ length: 14 }, (_, one) => one)) {
      await sample.must('card.set', { car: 'pip', key: `long-${at}`, name: `A figure of my own, number ${at}`, value: 'that goes on and on '.repeat(9), note: 'And its note goes on as well, as notes do. '.repeat(5) });
    }
    await sample.goTo('Pip', 'Data card');
    await page.getByText('This card is too long for one page: it will print on more.').waitFor();
    expect((await printedPages(page, 'A4')).length).toBeGreaterThan(1);
  });

  test('nothing complained', () => expect(sample.complaints).toEqual([]));
});
