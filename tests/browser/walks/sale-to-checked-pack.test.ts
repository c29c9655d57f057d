import { describe, expect, test } from 'vitest';
import { chromiumHere } from '../launch-chromium.ts';
import { HANDS } from './hands.ts';
import { walk } from './walk.ts';

const MOST = { mouse: 18, keyboard: 132 };

describe.skipIf(chromiumHere === null)('from a sale to the checked pack', { timeout: 120_000 }, () => {
  test.each(HANDS)('by %s', (by) =>
    walk(by, { sample: true, most: MOST }, async ({ page, hands, heading, milestone, must }) => {
      const records = (await must('car.show', { car: 'pip' })).records.length;
      await heading('The yard');
      await hands.press('Handover', '6');
      await heading('Handover');
      await hands.choose('Car', 'Pip');
      await hands.press('None');
      await hands.press('Look at it first');
      await page.getByRole('heading', { name: 'What it will hold' }).waitFor();
      await page.getByRole('img', { name: 'Page 1 of the document' }).waitFor();
      await milestone('the pack, looked at');
      await hands.press('Write the pack');
      await page.getByText(/^The pack is written: \d+ files\.$/).waitFor();
      const path = await page.locator('dd').filter({ hasText: '.zip' }).innerText();

      await hands.press('A car leaves');
      await hands.choose('Which car leaves', 'Pip');
      await page.getByRole('heading', { name: 'Pip leaves' }).waitFor();
      await hands.fill(/^What it brought/, '1250');
      await hands.press('It has left');
      await page.getByText('Pip was sold on 25 Nov 2026.').first().waitFor();
      await milestone('the car that left');

      await hands.press('Check a pack');
      await hands.hand('Choose the ZIP', path);
      await hands.press('Check it');
      await page.getByRole('heading', { name: 'The pack is sound' }).waitFor();
      await page.getByRole('button', { name: 'Take the car in' }).waitFor();
      await milestone('the checked pack');

      await hands.press('Yard', '1');
      await heading('The yard');
      await expect.poll(() => page.locator('[data-lane]:not([data-lane=""])').count()).toBe(4);
      expect(await page.getByRole('heading', { name: 'Pip', exact: true }).count()).toBe(0);
      await hands.press('Handover', '6');
      await hands.press('A car leaves');
      await hands.press('Pip');
      await page.getByText('Sold on 25 Nov 2026. Nothing of this car is due any more.').waitFor();
      expect((await must('car.show', { car: 'pip' })).records.length).toBe(records);
      await milestone('the history of the car that left');
    }));
});
