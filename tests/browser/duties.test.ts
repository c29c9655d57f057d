import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumHere } from './launch-chromium.ts';
import { day } from '../shared-core/calendar/day.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

describe.skipIf(chromiumHere === null)('obligations and recalls of a car', () => {
  let sample: SamplePage;
  beforeAll(async () => {
    sample = await openSamplePage();
    await sample.goTo('Pip', 'Care');
  });
  afterAll(() => sample.close());

  const said = (text: string) => sample.page.getByRole('status').filter({ hasText: text }).waitFor();

  test('an obligation is changed, and the change undone', async () => {
    const { page } = sample;
    await page.getByRole('button', { name: 'Change roadworthiness test' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('textbox', { name: 'Last valid day' }).fill('3 Mar 2027');
    await dialog.getByRole('textbox', { name: /^Think of it/ }).fill('45');
    await page.keyboard.press('Enter');
    await said('roadworthiness test is changed.');
    await page.getByText('by 3 Mar 2027').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('by 3 Mar 2027').waitFor({ state: 'detached' });
  });

  test('a recall is entered, done half, refused at its field, then done', async () => {
    const { page } = sample;
    await page.getByRole('button', { name: 'Enter a recall' }).click();
    await page.keyboard.type('R-77');
    await page.keyboard.press('Tab');
    await page.keyboard.type('Hose may chafe');
    await page.getByRole('button', { name: 'Enter the recall' }).press('Enter');
    await said('Recall R-77 is kept in mind.');
    await page.getByRole('button', { name: 'Say how it was done: recall R-77' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('textbox', { name: 'Done on' }).fill('20 Nov 2026');
    await page.keyboard.press('Enter');
    await dialog.getByRole('alert').filter({ hasText: 'Not recorded' }).waitFor();
    await expect.poll(() => dialog.getByRole('textbox', { name: 'How it was done' }).evaluate((field) => field === document.activeElement)).toBe(true);
    await page.keyboard.type('hose replaced');
    await page.keyboard.press('Enter');
    await said('Recall R-77 is changed.');
    await page.getByRole('button', { name: 'Change recall R-77' }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: /^Show \d+ that/ }).click();
    await page.getByRole('button', { name: 'Change recall R-77' }).waitFor();
    await sample.axeAtEverySize('duties');
  });

  test("a car's first test is counted from its first registration", async () => {
    const { page } = sample;
    await sample.must('car.add', { name: 'Foal', firstRegistered: '2025-06-10' as never });
    await sample.goTo('Foal', 'Care');
    await page.getByRole('button', { name: 'Add an obligation' }).click();
    await page.getByLabel('It holds until').selectOption('3');
    await page.getByRole('button', { name: 'Add the obligation' }).click();
    await page.getByText('by 10 Jun 2028').waitFor();
  });

  test('recalls and distance allowances stand in the yard, are counted, and lead to their place in Car', async () => {
    const { page } = sample;
    const { ahead } = await sample.must('yard.show', {});
    await page.getByRole('navigation').getByRole('link', { name: 'Yard', exact: true }).click();
    await page.getByText(`${ahead.recalls} recalls wait`).waitFor();
    const waiting = page.getByRole('region', { name: 'What waiting costs' });
    await expect.poll(() => waiting.getByRole('link', { name: /: recall / }).count()).toBe(ahead.recalls);
    await page.locator('[data-mark="ember/recall/ember-recall-2207"]').click();
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('recall-ember-recall-2207');
    await page.getByRole('navigation').getByRole('link', { name: 'Yard', exact: true }).click();
    await page.getByRole('button', { name: 'Unfold all lanes' }).click();
    await page.locator('[data-mark="ember/allowance/ember-insured"]').click();
    await page.locator('a[aria-current=page]', { hasText: 'Distance and use' }).waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('allowance-ember-insured');
  });

  test('a neglected car does not push the rest of the list out of sight; a long word does not push the page wide', async () => {
    const { page } = sample;
    await sample.must('car.add', { id: 'rook', name: 'Rook', firstRegistered: day('2019-03-02') });
    for (let n = 1; n <= 14; n++) await sample.must('item.add', { id: `rook-${n}`, car: 'rook', name: n === 1 ? 'a'.repeat(80) : `item ${n}`, interval: { repeat: { months: 12, distance: null } }, history: 'never-done' });
    await page.getByRole('navigation').getByRole('link', { name: 'Yard', exact: true }).click();
    const late = page.getByRole('region', { name: 'What waiting costs' }).getByRole('list', { name: 'Late', exact: true }).getByRole('listitem');
    const { lanes } = await sample.must('yard.show', {});
    const all = lanes.flatMap((lane) => lane.windows).filter((window) => window.state === 'late').length;
    await expect.poll(() => late.count()).toBe(12);
    await page.getByRole('button', { name: `Show all ${all}`, exact: true }).press('Enter');
    await expect.poll(() => late.count()).toBe(all);
    await sample.goTo('Rook', 'What is known');
    await page.getByText('Nobody has entered how many minutes these 14 items take.').waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  });

  test('nothing complained', () => expect(sample.complaints).toEqual([]));
});
