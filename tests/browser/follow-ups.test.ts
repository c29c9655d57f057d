import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

describe.skipIf(chromiumHere === null)('follow-ups', () => {
  let sample: SamplePage;
  beforeAll(async () => {
    sample = await openSamplePage();
  });
  afterAll(() => sample.close());

  const said = (text: string) => sample.page.getByRole('status').filter({ hasText: text }).waitFor();

  test('stand on the yard and in its table, and are ticked there with one press, and undone', async () => {
    const { page } = sample;
    await page.getByRole('navigation').getByRole('link', { name: 'Yard' }).click();
    const list = page.getByRole('list', { name: 'To look at after a work' });
    await list.getByRole('link', { name: 'Pip: Wheel bolts: torque once more' }).waitFor();
    await page.getByText('Table', { exact: true }).click();
    await page.getByRole('row', { name: /^Heron look again: Look whether the cleaned vent/ }).waitFor();
    await page.getByText('Lanes', { exact: true }).click();
    await page.getByRole('button', { name: 'Tick: Wheel bolts: torque once more' }).press('Enter');
    await said('"Wheel bolts: torque once more" is ticked.');
    await list.getByRole('link', { name: 'Pip: Wheel bolts: torque once more' }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo' }).click();
    await list.getByRole('link', { name: 'Pip: Wheel bolts: torque once more' }).waitFor();
    await sample.axeAtEverySize('follow-ups-yard');
  });

  test('one is added by hand in a few keys, shown on its car, dropped and given back', async () => {
    const { page } = sample;
    await sample.goTo('Pip', 'Care');
    await page.getByRole('button', { name: 'Add a follow-up' }).press('Enter');
    await page.getByRole('dialog').getByRole('textbox', { name: 'What is to be looked at' }).waitFor();
    await page.keyboard.type('Missed one screw');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type('3');
    await page.keyboard.press('Enter');
    await said('It is kept in mind.');
    await page.getByText('On 28 Nov 2026.').waitFor();
    await page.getByRole('button', { name: /^Remove, for it was entered by mistake: Missed one screw/ }).press('Enter');
    await said('"Missed one screw" is removed.');
    await page.getByText('On 28 Nov 2026.').waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('On 28 Nov 2026.').waitFor();
    await sample.axeAtEverySize('follow-ups-care');
  });

  test('one is put off on the yard and on its car, which say so; one undo puts it back', async () => {
    const { page } = sample;
    await page.getByRole('navigation').getByRole('link', { name: 'Yard' }).click();
    await page.getByRole('button', { name: 'Put off: Wheel bolts: torque once more' }).press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Put off: Wheel bolts: torque once more' });
    await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement | null)?.labels?.[0]?.textContent)).toBe('To this day');
    await page.keyboard.press('Enter');
    await dialog.getByText('Say to which day it is put off, or after what distance from today.').first().waitFor();
    await page.keyboard.type('2026-12-10');
    await dialog.getByRole('textbox', { name: 'Why (may stay empty)' }).fill('no torque wrench');
    await sample.axeAtEverySize('follow-up-put-off');
    await page.keyboard.press('Enter');
    await said('"Wheel bolts: torque once more" is put off.');
    await page.getByText(/^Put off from .* to 10 Dec 2026: no torque wrench\.$/).waitFor();
    await sample.goTo('Pip', 'Care');
    await page.getByText(/^Put off from .* to 10 Dec 2026: no torque wrench\.$/).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText(/^Put off from/).waitFor({ state: 'detached' });
  });

  test('without a time is refused at its field; what is ticked is folded away', async () => {
    const { page } = sample;
    await sample.goTo('Alder', 'Care');
    await page.getByRole('button', { name: 'Show 1 that is ticked' }).click();
    await page.getByText('Look for oil below the new filter').waitFor();
    await page.getByRole('button', { name: 'Add a follow-up' }).press('Enter');
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('textbox', { name: 'What is to be looked at' }).fill('Look at it');
    await dialog.getByRole('textbox', { name: 'After days' }).fill('');
    await page.keyboard.press('Enter');
    await dialog.getByText('Say after how many days, or after what distance, it is to be looked at.').first().waitFor();
    await expect.poll(() => dialog.getByRole('textbox', { name: 'After days' }).evaluate((field) => field === document.activeElement)).toBe(true);
    await page.keyboard.press('Escape');
  });
});
