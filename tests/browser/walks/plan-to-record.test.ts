import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { temporaryFolder } from '../../host/open-test-host.ts';
import { png } from '../../papers/small-files.ts';
import { chromiumHere } from '../launch-chromium.ts';
import { HANDS } from './hands.ts';
import { walk } from './walk.ts';

const SESSION = 'Sun 29 Nov, the drive';
const MOST = { mouse: 52, keyboard: 340 };

describe.skipIf(chromiumHere === null)('from a plan to the record', { timeout: 120_000 }, () => {
  test.each(HANDS)('by %s', (by) =>
    walk(by, { sample: true, most: MOST }, async ({ page, hands, heading, said, milestone, must }) => {
      await heading('The yard');
      await hands.press('Sessions', '3');
      await heading('Sessions');
      await hands.press('Propose sessions');
      await page.getByRole('button', { name: /^Keep all \d+ proposed$/ }).waitFor({ timeout: 60_000 });
      await milestone('the proposed sessions');
      await hands.press(`Keep it: ${SESSION}`);
      await said(/kept/);
      await page.getByRole('link', { name: `Work through it: ${SESSION}` }).waitFor();
      await hands.press(`Job sheet: ${SESSION}`);
      await heading(/^Job sheet: /);
      await page.getByRole('region', { name: 'Alder' }).first().waitFor();
      await milestone('the job sheet');

      await hands.press('All sessions');
      await heading('Sessions');
      await page.getByRole('link', { name: `Work through it: ${SESSION}` }).waitFor();
      await hands.press(`Work through it: ${SESSION}`);
      await page.getByRole('region', { name: 'Before the first step' }).waitFor();
      await milestone('what can hurt');
      await hands.press('I have read them: begin');
      const card = page.locator('section[data-ticked]');
      await card.waitFor();
      await milestone('the first step');
      const all = page.getByRole('heading', { name: /^All \d+ are ticked$/ });
      const at = () => page.locator('main h2').first().innerText();
      for (let step = 0; (await all.count()) === 0 && step < 60; step += 1) {
        const before = `${await at()} ${await page.evaluate(() => scrollY)}`;
        await hands.press('Done (space bar)', 'Space');
        await expect.poll(async () => `${await at()} ${await page.evaluate(() => scrollY)}`).not.toBe(before);
      }
      await all.waitFor();
      await milestone('all ticked');
      await hands.press('Write the record');
      await heading(/^Write the record: /);
      await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toMatch(/^Write the record: /);
      await hands.fill('The odometer showed (mi)', '171000');
      const receipt = join(temporaryFolder(), 'receipt.png');
      writeFileSync(receipt, png(40, 30));
      await hands.hand('Papers', receipt);
      await page.getByText('receipt.png').waitFor();
      await milestone('writing the record');
      await hands.press('Write the record');
      await said('2 records are written, and the session is closed.');
      await heading('Sessions');
      const moved = (await must('due.show', {})).cars.flatMap((one) => one.windows).filter(({ item }) => ['alder-new-pads', 'alder-pads', 'pip-plugs'].includes(item));
      expect(moved.map((one) => one.state)).toEqual(['ahead', 'ahead', 'ahead']);

      await hands.press('Car', '2');
      await heading('Alder');
      await page.getByRole('link', { name: 'receipt.png' }).first().waitFor();
      await hands.press(/^new front brake pads, brake pads and discs/);
      await heading(/^25 Nov 2026: /);
      await page.getByRole('list', { name: 'Papers' }).getByRole('link', { name: 'receipt.png' }).waitFor();
      await milestone('the record');
    }));
});
