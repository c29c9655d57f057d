import type { Page } from 'playwright-core';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { must } from '../../shared-core/result/assert.ts';
import { Keyboard } from './keyboard.ts';
import { chromiumHere } from './launch-chromium.ts';
import { printedText, type PrintedPage } from './printed-page.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

/** What one may have put together for one long day: four cars, everything that a sheet can have. */
const LONGEST = ['pip-oil', 'pip-coolant', 'pip-brake-fluid', 'pip-pads', 'pip-plugs', 'pip-air-filter', 'pip-cabin-filter', 'heron-leisure-battery', 'wren-hoses', 'ember-wipers'];
const CARS = ['Ember', 'Heron', 'Pip', 'Wren'];
const HEAD = 'Saturday, 28 November 2026, the drive';
/** In points: what is read at arm's length, on the floor beside the car. Common practice, no source. */
const LEAST_TYPE = 12;

/** In points: below this stand only the numbers of the pages. */
const FOOT = 36;

/** The job sheet of a long session of the sample; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('the job sheet', { timeout: 180_000 }, () => {
  let sample: SamplePage;
  let page: Page;
  let session: string;

  beforeAll(async () => {
    sample = await openSamplePage();
    page = sample.page;
    const kept = await sample.must('session.keep', { sessions: [{ day: '2026-11-28' as never, place: 'home', tasks: LONGEST.map((id) => ({ kind: 'item', id })) }] });
    session = must(kept.sessions[0], 'the session that was kept').id;
  });
  afterAll(() => sample.close());

  const car = (name: string) => page.getByRole('region', { name, exact: true });
  const part = (name: string, title: string) => car(name).getByRole('group', { name: title, exact: true });
  const step = (text: string) => car('Pip').getByRole('listitem').filter({ hasText: text });
  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).first().waitFor();
  const focused = () => page.evaluate(() => document.activeElement?.textContent ?? '');

  test('is opened from Sessions by the keyboard, and from the session on the yard', async () => {
    const keys = new Keyboard(page);
    await keys.press('Sessions');
    await page.getByRole('heading', { name: 'Sessions', level: 1 }).waitFor();
    await page.getByRole('link', { name: 'Job sheet: Sat 28 Nov, the drive' }).waitFor();
    await keys.press('Job sheet: Sat 28 Nov, the drive');
    await page.getByRole('heading', { name: 'Job sheet: Sat 28 Nov, the drive', level: 1 }).waitFor();
    await car('Pip').waitFor();
    await expect.poll(focused).toBe('Job sheet: Sat 28 Nov, the drive');
    expect(keys.faults).toEqual([]);
    await page.getByRole('navigation').getByRole('link', { name: 'Yard' }).click();
    await page.getByRole('list', { name: 'Sessions' }).getByRole('button', { name: /Sat 28 Nov, the drive/ }).click();
    await page.getByRole('dialog').getByRole('link', { name: 'Job sheet: Sat 28 Nov, the drive' }).click();
    await car('Wren').waitFor();
    expect(new URL(page.url()).pathname).toBe(`/sessions/${session}/sheet`);
  });

  test('of each car the cautions stand before the first step, the gravest first', async () => {
    for (const name of CARS) {
      await part(name, 'Before the first step').getByRole('listitem').first().getByText('The car maker’s own data').waitFor();
      expect(await car(name).evaluate((element) => [...element.querySelectorAll('h3')].map((heading) => heading.textContent)), name).toEqual(['Before the first step', ...(name === 'Heron' ? [] : ['To have in hand']), 'Steps', 'Afterwards']);
    }
    const grave = await part('Pip', 'Before the first step').getByRole('listitem').allTextContents();
    expect(grave.map((text) => /^([A-Z][a-z ]+?)(, | ?:)/.exec(text)?.[1] ?? '')).toEqual(['', 'Airbag', 'Lifting', 'Brakes', 'Running engine', 'Hot', 'Ignition', 'Brake fluid', 'Coolant', 'Used oil', 'Heavy']);
    expect(grave[1]).toContain('Airbag, licensed person: ');
    await part('Ember', 'Before the first step').getByText('This car has high voltage.').waitFor();
  });

  test('says what to have in hand: where parts stand, what is missing, figures with their source, and what the card lacks', async () => {
    const hand = part('Pip', 'To have in hand');
    await hand.getByRole('listitem').filter({ hasText: 'ramps (under the bench)' }).waitFor();
    await hand.getByRole('listitem').filter({ hasText: 'oil filter wrench, missing' }).waitFor();
    await hand.getByText('4.1 litres of Moss motor oil, shelf, floor').waitFor();
    await hand.getByRole('listitem').filter({ hasText: '3 pieces spark plug (Pip): 3 pieces missing, not on order' }).waitFor();
    await hand.getByText('30 N·m · sample handbook, page 213').waitFor();
    await hand.getByText(/^11 N·m is little for M12x1.5: .*Was it 11 kgf·m\?/).waitFor();
    await expect.poll(() => hand.locator('dt').filter({ hasText: /^Engine oil$/ }).count()).toBe(1);
    await hand.getByRole('link', { name: 'Enter it on the data card: Bleed screws' }).click();
    await page.locator('a[aria-current=page]', { hasText: 'Data card' }).waitFor();
    await page.goBack();
    await hand.waitFor();
  });

  test('numbers the steps through, each with its box, and leaves a line for what is measured or not known', async () => {
    const steps = part('Pip', 'Steps').locator('ol > li');
    await expect.poll(() => steps.count()).toBe(60);
    expect(await steps.evaluateAll((all) => all.map((one) => (one as HTMLLIElement).value))).toEqual(Array.from({ length: 60 }, (_, at) => at + 1));
    await step('Measure the water in the old fluid.').getByText(/^Water in the brake fluid: +%$/).waitFor();
    await step('Fill in a little less than the whole quantity').getByText('4.1 L').waitFor();
    await step('Put the coil or lead back').getByText('N·m · not entered').waitFor();
    await part('Pip', 'Afterwards').getByRole('listitem').filter({ hasText: 'engine oil and filter: Set the service reminder back' }).waitFor();
    await part('Pip', 'Afterwards').getByRole('listitem').filter({ hasText: 'Used oil: in a closed can to an authorised collecting place' }).waitFor();
    await part('Pip', 'Afterwards').getByRole('listitem').filter({ hasText: 'Wheel bolts or nuts: torque once more, after 7 days or 50 km' }).first().waitFor();
  });

  test('gives torques in the unit that is chosen, and keeps the choice', async () => {
    const plug = step('Wipe the seat, put a new washer on the drain plug');
    await plug.getByText('Oil drain plug: 30 N·m', { exact: true }).waitFor();
    await page.getByText('lbf·ft', { exact: true }).click();
    // 30 N·m / 1.355 818 = 22.1 (NIST SP 811, B.8)
    await plug.getByText('Oil drain plug: 22.1 lbf·ft (entered as 30 N·m)', { exact: true }).waitFor();
    await page.reload();
    await plug.getByText('22.1 lbf·ft').waitFor();
    await page.getByText('lbf·in', { exact: true }).click();
    await plug.getByText('266 lbf·in').waitFor();
    await page.getByText('N·m', { exact: true }).first().click();
    await plug.getByText('Oil drain plug: 30 N·m', { exact: true }).waitFor();
  });

  test('a task without a sheet is begun from a starting sheet, the likely one first, and that is undone', async () => {
    const begin = car('Heron').getByRole('button', { name: 'Begin one from a starting sheet: living-room battery tested' });
    await begin.click();
    await expect.poll(() => car('Heron').getByLabel('Starting sheet').locator('option').first().textContent()).toBe('12 V battery: a check (likely)');
    await sample.axeAtEverySize('the job sheet');
    await car('Heron').getByRole('button', { name: 'Begin it' }).click();
    await said('The sheet of “living-room battery tested” is begun from “12 V battery: a check”.');
    await expect.poll(() => part('Heron', 'Steps').locator('ol > li').count()).toBe(5);
    await expect.poll(focused).toBe('Heron');
    await page.getByRole('button', { name: 'Undo' }).click();
    await begin.waitFor();
  });

  test.each([['A4', 595, 842], ['Letter', 612, 792]] as const)('prints on %s: each car on its own pages, named at their heads, in type to be read at arm’s length', async (paper, width, height) => {
    await page.getByText(paper, { exact: true }).click();
    await expect.poll(() => page.getByRole('radio', { name: paper }).isChecked()).toBe(true);
    const pages = await printed(page);
    expect(pages.map((one) => [Math.round(one.width), Math.round(one.height)])).toEqual(pages.map(() => [width, height]));
    const heads = pages.map((one) => printedText(one));
    const cars = heads.map((text) => must(CARS.find((name) => text.startsWith(`${name} ${HEAD}`)), `a car at the head of: ${text.slice(0, 60)}`));
    expect([...new Set(cars)]).toEqual(CARS);
    expect(cars).toEqual([...cars].sort());
    // What is short is not split.
    expect(cars.filter((name) => name === 'Ember' || name === 'Heron')).toEqual(['Ember', 'Heron']);
    heads.forEach((text, at) => expect(text).toContain(`Page ${at + 1} of ${pages.length}`));
    // A block goes on over the page: none but the last of a car ends above its lower quarter.
    pages.forEach(({ pieces }, at) => {
      if (cars[at] !== cars[at + 1]) return;
      const lowest = Math.min(...pieces.map((piece) => piece.y).filter((y) => y > FOOT));
      expect(lowest, `page ${at + 1}`).toBeLessThan(height / 4);
    });
    const all = heads.join(' ');
    for (const never of ['Settings', 'All sessions', 'Undo', 'Begin', 'Print', 'Enter it']) expect(all).not.toContain(never);
    expect(all).toContain('Nobody has written its steps.');
    for (const one of pages) {
      for (const { text, size, x, width: long } of one.pieces) {
        expect(size, text).toBeGreaterThanOrEqual(LEAST_TYPE - 0.05);
        expect(x + long, text).toBeLessThanOrEqual(width - 30);
      }
    }
  });

  test('a session that is not there is refused, with the way back', async () => {
    await page.evaluate(() => {
      history.pushState(null, '', '/sessions/none/sheet');
    });
    await page.getByRole('alert').waitFor();
    await page.getByRole('alert').getByRole('link', { name: 'All sessions' }).click();
    await page.getByRole('heading', { name: 'Sessions', level: 1 }).waitFor();
    expect(sample.complaints).toEqual([]);
  });
});

/** Prints the page on the paper that it asks for itself, and reads it with another program. */
async function printed(page: Page): Promise<readonly PrintedPage[]> {
  const bytes = await page.pdf({ preferCSSPageSize: true });
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  return Promise.all(Array.from({ length: pdf.numPages }, async (_, at) => {
    const one = await pdf.getPage(at + 1);
    const { width, height } = one.getViewport({ scale: 1 });
    const { items } = await one.getTextContent();
    const pieces = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [{ text: item.str, x: Number(item.transform[4]), y: Number(item.transform[5]), width: item.width, size: item.height }] : []));
    return { width, height, pieces };
  }));
}
