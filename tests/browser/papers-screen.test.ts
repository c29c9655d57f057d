import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { amountText } from '../../shared-core/units/money.ts';
import { must } from '../../shared-core/result/assert.ts';
import { sayDate } from '../../shared-core/result/words/say.ts';
import { pdfOf, photograph } from '../papers/made-papers.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

describe.skipIf(chromiumHere === null)('the Papers screen', () => {
  let sample: SamplePage;
  beforeAll(async () => {
    sample = await openSamplePage();
  });
  afterAll(() => sample.close());

  const said = (text: string) => sample.page.getByRole('status').filter({ hasText: text }).first().waitFor();

  /** Drops or pastes files as a person does: an event with the files themselves. */
  const give = (kind: 'drop' | 'paste', files: readonly { name: string; bytes: Buffer }[]) =>
    sample.page.evaluate(([how, given]) => {
      const transfer = new DataTransfer();
      for (const { name, base64 } of given) transfer.items.add(new File([Uint8Array.from(atob(base64), (one) => one.charCodeAt(0))], name));
      const event = how === 'drop' ? new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }) : new ClipboardEvent('paste', { clipboardData: transfer, bubbles: true, cancelable: true });
      document.body.dispatchEvent(event);
    }, [kind, files.map(({ name, bytes }) => ({ name, base64: bytes.toString('base64') }))] as const);

  test('files are kept by dropping and pasting, each that is refused is named, and one goes from the inbox to its record, back, aside and into a new record', async () => {
    const { page } = sample;
    await page.getByRole('navigation').getByRole('link', { name: 'Papers', exact: true }).click();
    await page.getByRole('heading', { name: 'Papers', level: 1 }).waitFor();
    const { cars } = await sample.must('due.show', {});
    const { records, currency } = await sample.must('car.show', { car: cars[0]?.id ?? '' });
    const { record, totalMinor } = must(records.find((one) => one.totalMinor > 0), 'a record that cost something');
    const receipt = await pdfOf(['Invented receipt', `Date ${record.date}`, `Total ${amountText(totalMinor, currency)}`], ['Second page: terms']);
    await give('drop', [{ name: 'receipt.pdf', bytes: receipt }, { name: 'broken.pdf', bytes: receipt.subarray(0, 400) }, { name: 'empty.txt', bytes: Buffer.alloc(0) }]);
    await said('1 paper is kept.');
    await page.getByText('broken.pdf: That PDF is cut short or broken. Get it again.').waitFor();
    await page.getByText(/empty\.txt: /).waitFor();
    await give('paste', [{ name: 'image.png', bytes: await photograph(300, 200) }, { name: 'again.pdf', bytes: receipt }]);
    await page.getByText('again.pdf: here already as receipt.pdf, belonging to nothing yet.').waitFor();
    await page.getByRole('list', { name: 'Papers' }).getByRole('link', { name: 'image.png' }).waitFor();
    await page.locator('li', { hasText: 'receipt.pdf' }).getByText(`: ${record.title}`).first().waitFor();
    await page.waitForFunction(() => [...document.querySelectorAll<HTMLImageElement>('ul img')].every((image) => image.complete && image.naturalWidth > 0));
    await page.getByRole('button', { name: 'Close this list' }).click();
    await sample.axeAtEverySize('papers');

    await page.getByRole('link', { name: 'receipt.pdf' }).click();
    await page.getByRole('heading', { name: 'receipt.pdf', level: 1 }).waitFor();
    await page.getByRole('img', { name: 'Page 1 of receipt.pdf' }).waitFor();
    await page.getByText(`Its total is ${amountText(totalMinor, currency)} ${currency}, as the record says.`).first().waitFor();
    await page.waitForFunction(() => document.querySelector<HTMLImageElement>('[role=region] img')?.naturalWidth ?? 0 > 0);
    await sample.axeAtEverySize('paper');
    await page.getByRole('region', { name: 'The paper' }).press('ArrowRight');
    await page.getByRole('img', { name: 'Page 2 of receipt.pdf' }).waitFor();
    await page.getByRole('region', { name: 'The paper' }).press('r');
    await page.locator('[role=region] img[data-turned="90"]').waitFor();
    // Turned, all of it can be reached: nothing of it lies left of or above the frame.
    await expect.poll(() => page.locator('[role=region] img').evaluate((image) => {
      const [shown, frame] = [image.getBoundingClientRect(), image.parentElement?.getBoundingClientRect() ?? new DOMRect()];
      return Math.max(Math.abs(shown.left - frame.left), Math.abs(shown.top - frame.top), Math.abs(shown.right - frame.right), Math.abs(shown.bottom - frame.bottom)) < 2 && shown.width > shown.height;
    })).toBe(true);
    await page.getByRole('button', { name: `Put it with this: ${record.title}, ${sayDate(record.date)}` }).first().press('Enter');
    await said(`It is with "${record.title}" now.`);
    expect((await sample.must('car.show', { car: record.car })).records.find((one) => one.record.id === record.id)?.record.papers.length).toBe(record.papers.length + 1);
    await page.getByRole('button', { name: `Untie from ${record.title}` }).press('Enter');
    await said('It is untied.');
    await page.getByText('Nothing yet.').waitFor();
    await page.getByRole('button', { name: 'It needs no record: set aside' }).press('Enter');
    await said('receipt.pdf is set aside.');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('Nothing yet.').waitFor();

    const other = cars.find((one) => one.id !== record.car);
    const choice = page.getByRole('group', { name: 'Tick what it belongs to' }).locator('..');
    await choice.getByRole('combobox', { name: 'Car' }).selectOption(record.car);
    await page.getByRole('checkbox', { name: 'the car as a whole' }).check();
    await page.getByRole('checkbox', { name: `work: ${record.title}, ${sayDate(record.date)}` }).first().check();
    await choice.getByRole('combobox', { name: 'Car' }).selectOption(other?.id ?? '');
    await page.getByRole('checkbox', { name: 'the car as a whole' }).check();
    await page.getByRole('button', { name: 'Put it with what is ticked (3)' }).press('Enter');
    await said('It was put with 3 things.');
    await page.getByRole('button', { name: `Untie from ${other?.name ?? ''}`, exact: true }).waitFor();
    expect(await page.getByRole('button', { name: /^Untie from / }).count()).toBe(3);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByText('Nothing yet.').waitFor();

    await page.getByRole('textbox', { name: 'What was done' }).fill('Wiper blades');
    await page.getByRole('button', { name: 'Record it with this paper' }).press('Enter');
    await said('"Wiper blades" is recorded with its paper.');
    await page.getByRole('link', { name: 'work: Wiper blades' }).waitFor();
    expect(sample.complaints).toEqual([]);
  }, 240_000);

  test('a folder that is chosen is kept with what lies in the folders within it, and what is hidden is passed over', async () => {
    const { page } = sample;
    const folder = mkdtempSync(join(tmpdir(), 'papers-folder-'));
    try {
      mkdirSync(join(folder, 'within'));
      writeFileSync(join(folder, 'first of folder.pdf'), await pdfOf(['One of a folder']));
      writeFileSync(join(folder, 'within', 'deeper.pdf'), await pdfOf(['One further down']));
      writeFileSync(join(folder, '.hidden'), 'hidden');
      await page.getByRole('navigation').getByRole('link', { name: 'Papers', exact: true }).click();
      const chosen = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: 'Keep a folder' }).click();
      await (await chosen).setFiles(folder);
      await said('2 papers are kept.');
      const list = page.getByRole('list', { name: 'Papers' });
      await list.getByRole('link', { name: 'first of folder.pdf' }).waitFor();
      await list.getByRole('link', { name: 'deeper.pdf' }).waitFor();
      expect(await list.getByRole('link', { name: '.hidden' }).count()).toBe(0);
      expect(sample.complaints).toEqual([]);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }, 120_000);
});
