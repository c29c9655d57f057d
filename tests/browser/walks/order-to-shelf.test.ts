import { describe, expect, test } from 'vitest';
import { chromiumHere } from '../launch-chromium.ts';
import { HANDS } from './hands.ts';
import { walk } from './walk.ts';

const MOST = { mouse: 15, keyboard: 243 };
const ORDER = 'Copper Lane Parts, 25 Nov';

describe.skipIf(chromiumHere === null)('from an order to the shelf', { timeout: 120_000 }, () => {
  test.each(HANDS)('by %s', (by) =>
    walk(by, { sample: true, most: MOST }, async ({ page, hands, heading, said, closed, milestone, must }) => {
      const region = (name: string) => page.getByRole('region', { name });
      const sheet = page.getByRole('dialog');
      const need = async () => (await must('needs.show', {})).needs.find((one) => one.item === 'pip-plugs')?.state;
      await heading('The yard');
      await hands.press('Parts', '4');
      await heading('Parts');
      await page.getByText('17 needs by 23 Feb 2027: 1 on the shelf, 16 to be bought.').waitFor();
      expect(await need()).toBe('missing');
      await milestone('what is needed');

      await hands.press('The order');
      await hands.press('Work out the order');
      await region('What it comes to').getByText(/^To buy what is needed costs £/).waitFor({ timeout: 60_000 });
      await region('Copper Lane Parts').getByRole('row', { name: /Spark plug P1 .*3 £/ }).waitFor();
      await milestone('the order');
      await hands.press('Place this order: Copper Lane Parts');
      await sheet.waitFor();
      await hands.fill('Their number of it', 'CL-77');
      await hands.press('Write down as placed');
      await closed();
      await said('The order with Copper Lane Parts is placed.');
      await expect.poll(need).toBe('on-the-way');

      await hands.press('Placed orders');
      await region(ORDER).getByText('their number CL-77').waitFor();
      // All but the first line comes at first, then that too.
      for (const [good, came] of [['0', /Clear brake fluid .* 1 0 0 0 1 /], ['1', /Clear brake fluid .* 1 1 0 0 0 /]] as const) {
        await hands.press(`Take in what came: ${ORDER}`);
        await sheet.waitFor();
        await hands.fill('Good packs', good);
        await hands.press('Take it in');
        await closed();
        await said('on the shelf.');
        await region(ORDER).getByRole('row', { name: came }).waitFor();
      }
      await region(ORDER).getByText('delivered', { exact: true }).waitFor();
      await milestone('the placed orders');

      await hands.press('The shelf');
      await page.getByRole('button', { name: /^Use: Spark plug P1, / }).first().waitFor();
      await milestone('the shelf');
      await hands.press('What is needed');
      await page.getByRole('row', { name: /Pip: spark plugs .*on the shelf/ }).waitFor();
      expect(await need()).toBe('on-shelf');
    }));
});
