import { describe, expect, test } from 'vitest';
import { chromiumHere } from '../launch-chromium.ts';
import { HANDS } from './hands.ts';
import { walk } from './walk.ts';

const MOST = { mouse: 25, keyboard: 89 };

describe.skipIf(chromiumHere === null)('from the first start to the first forecast', { timeout: 90_000 }, () => {
  test.each(HANDS)('by %s', (by) =>
    walk(by, { sample: false, most: MOST }, async ({ page, hands, heading, said, closed, milestone }) => {
      await heading('Welcome to Trunnion');
      await milestone('the first start');
      await hands.fill(/^Name of the household/, 'Ours');
      await hands.press('Start the household');
      await heading('The yard');
      await hands.press(/^Add (a|the|your) (first )?car/i);

      await page.getByLabel('Starting set').waitFor();
      await hands.fill(/^Name/, 'Pip');
      await hands.choose(/^Driven by/, 'diesel');
      await hands.fill(/^First registered/, '1/3/2022');
      await hands.fill(/^Kept since/, '1/5/2026');
      await expect.poll(() => page.getByLabel('Starting set').inputValue()).toBe('diesel');
      await hands.choose(/^Before these records/, 'count from when I got it');
      await hands.press('Add the car');
      await heading('Pip');
      await milestone('the new car');

      for (const [value, date] of [['30000', '1/5/2026'], ['33500', '1/8/2026'], ['37600', '20/11/2026']] as const) {
        await hands.press('Enter a reading');
        await page.getByRole('dialog').getByLabel(/^The odometer shows/).waitFor();
        await hands.fill(/^The odometer shows/, value);
        await hands.fill(/^On/, date);
        await hands.press('Record the reading');
        await closed();
        await said('recorded.');
      }

      await hands.press('Yard', '1');
      await heading('The yard');
      const lane = page.locator('[data-lane]').filter({ has: page.getByRole('heading', { name: 'Pip', exact: true }) });
      await lane.getByText(/^37\u202f\d{3} to 3\d\u202f\d{3} mi$/).waitFor();
      await hands.press(/^Show all of Pip/);
      await lane.getByRole('link', { name: /^Engine oil and filter\. later\. .*, likely .*Distance comes first/ }).waitFor();
      expect(await lane.getByText('not known').count()).toBe(0);
      await milestone('the first forecast');
    }));
});
