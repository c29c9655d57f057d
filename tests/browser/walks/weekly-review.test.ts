import { describe, expect, test } from 'vitest';
import { chromiumHere } from '../launch-chromium.ts';
import { HANDS } from './hands.ts';
import { walk } from './walk.ts';

const MOST = { mouse: 8, keyboard: 78 };
const THIN = '\u202f';

describe.skipIf(chromiumHere === null)('the weekly review', { timeout: 90_000 }, () => {
  test.each(HANDS)('by %s', (by) =>
    walk(by, { sample: true, most: MOST }, async ({ page, hands, heading, said, milestone }) => {
      const lane = (car: string) => page.locator('[data-lane]').filter({ has: page.getByRole('heading', { name: car, exact: true }) });
      const list = page.getByRole('region', { name: 'What waiting costs' });
      await heading('The yard');
      await page.getByText(/^Next 90 days: 18 items fall due, 3 of them late already/).waitFor();
      await milestone('the yard');

      // From anywhere by R and the lane's letter; from within a lane R is that lane's own.
      for (const [car, typed, unit, keys] of [['Ember', '48900', 'km', ['r', 'b']], ['Pip', '34200', 'mi', []]] as const) {
        await hands.press(`Enter a reading for ${car} (key R)`, ...keys);
        await page.getByLabel(new RegExp(`^Odometer of ${car}`)).waitFor();
        await hands.enter(typed);
        await said(`${car}: ${typed.slice(0, 2)}${THIN}${typed.slice(2)} ${unit} recorded.`);
        await lane(car).getByText(/last read 25 Nov/).waitFor();
      }

      await hands.press(/^It was 58.476 km$/);
      await said(/^Heron: 58.476 km recorded instead\./);
      await list.getByText('Readings in doubt').waitFor({ state: 'detached' });
      await hands.press('Tick: Wheel bolts: torque once more');
      await said('"Wheel bolts: torque once more" is ticked.');
      await list.getByRole('link', { name: 'Pip: Wheel bolts: torque once more' }).waitFor({ state: 'detached' });
      await milestone('the yard, gone through');

      await hands.press('Alder: fuel filter');
      await heading('Alder');
      await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toContain('past its distance');
      await milestone('the first late thing');
      await hands.press('Yard', '1');
      await heading('The yard');
      await lane('Pip').getByText(/last read 25 Nov/).waitFor();
    }));
});
