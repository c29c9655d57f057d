import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { must } from '../../shared-core/result/assert.ts';
import { pdfOf } from '../papers/made-papers.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

/** A folder for pictures of the screens, where somebody wants to look at them. */
const PICTURES = process.env['TRUNNION_PICTURES'] ?? '';

describe.skipIf(chromiumHere === null)('blacking out parts of a paper', () => {
  let sample: SamplePage;
  let paper = '';
  beforeAll(async () => {
    sample = await openSamplePage();
    const base64 = (await pdfOf(['To Somebody Invented', 'Account 000 111', 'Total 12.50'], ['Terms', 'Somebody Invented again'])).toString('base64');
    paper = (await sample.must('paper.keep', { name: 'invoice.pdf', base64 })).paper.id;
  });
  afterAll(() => sample.close());

  const marks = async () => (await sample.must('paper.show', { paper })).marks;
  const picture = async (name: string) => {
    if (PICTURES === '') return;
    mkdirSync(PICTURES, { recursive: true });
    await sample.page.screenshot({ path: join(PICTURES, `${name}.png`), fullPage: true });
  };
  /** How dark the picture of the copy is at a place given in fractions. */
  const darkness = (x: number, y: number) => sample.page.locator('[role=region] img').evaluate((image, [across, down]) => {
    const shown = image as HTMLImageElement;
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [shown.naturalWidth, shown.naturalHeight];
    const drawing = canvas.getContext('2d');
    drawing?.drawImage(shown, 0, 0);
    return drawing?.getImageData(Math.floor(across * shown.naturalWidth), Math.floor(down * shown.naturalHeight), 1, 1).data[0] ?? -1;
  }, [x, y] as const);

  test('is done by the keyboard and by the mouse, on several pages, kept, looked at as it is handed over, undone and taken away', async () => {
    const { page } = sample;
    await page.getByRole('navigation').getByRole('link', { name: 'Papers', exact: true }).click();
    await page.getByRole('link', { name: 'invoice.pdf' }).click();
    await page.getByRole('button', { name: 'Black parts out' }).press('Enter');
    await page.getByRole('heading', { name: 'What is black when it is handed over' }).waitFor();

    // By the keyboard: added, moved, made larger, and one too many taken away.
    await page.getByRole('button', { name: 'Add a part' }).press('Enter');
    const part = page.getByRole('button', { name: /^Part 1 on page 1/ });
    await expect.poll(() => part.evaluate((one) => one === document.activeElement)).toBe(true);
    await part.press('ArrowUp');
    await part.press('ArrowLeft');
    await part.press('Shift+ArrowRight');
    await part.press('Shift+ArrowDown');
    await page.getByRole('button', { name: 'Part 1 on page 1: 29 % from the left, 39 % from the top, 41 % wide, 9 % high' }).waitFor();
    await page.getByRole('button', { name: 'Add a part' }).press('Enter');
    await page.getByRole('button', { name: /^Part 2 on page 1/ }).press('Delete');
    await expect.poll(() => page.getByRole('button', { name: /^Part \d on page 1/ }).count()).toBe(1);
    await expect.poll(() => part.evaluate((one) => one === document.activeElement)).toBe(true);
    await page.getByText('These marks are not kept yet.').waitFor();
    await sample.axeAtEverySize('marking');
    await picture('marking');
    await page.getByRole('button', { name: 'As it is handed over' }).click();
    await page.getByText('Keep the marks first').waitFor();
    await page.getByRole('button', { name: 'With its marks' }).click();

    // By the mouse, on the second page.
    await page.getByRole('button', { name: 'Next page' }).click();
    const shown = page.getByRole('img', { name: 'Page 2 of invoice.pdf' });
    await shown.waitFor();
    await expect.poll(() => shown.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBeGreaterThan(300);
    await shown.scrollIntoViewIfNeeded();
    const box = must(await shown.boundingBox(), 'place of the page');
    await page.mouse.move(box.x + 0.1 * box.width, box.y + 0.05 * box.height);
    await page.mouse.down();
    await page.mouse.move(box.x + 0.3 * box.width, box.y + 0.1 * box.height);
    await page.mouse.move(box.x + 0.6 * box.width, box.y + 0.2 * box.height);
    await page.mouse.up();
    const drawn = page.getByRole('button', { name: /^Part 1 on page 2: 10 % from the left, 5 % from the top, 50 % wide, 15 % high/ });
    await drawn.waitFor();
    await page.getByRole('button', { name: 'Keep these marks' }).press('Enter');
    await page.getByRole('status').filter({ hasText: 'invoice.pdf: 2 parts are black in what is handed over.' }).first().waitFor();
    expect((await marks()).map((mark) => mark.page)).toEqual([1, 2]);

    await page.getByRole('button', { name: 'As it is handed over' }).press('Enter');
    await page.getByRole('img', { name: 'Page 2 of the copy, as it is handed over' }).waitFor();
    await expect.poll(() => page.locator('[role=region] img').evaluate((image) => (image as HTMLImageElement).naturalWidth), { timeout: 20_000 }).toBeGreaterThan(300);
    expect([await darkness(0.35, 0.12), await darkness(0.8, 0.6)].map((value) => value < 10)).toEqual([true, false]);
    await sample.axeAtEverySize('handed over');
    await picture('handed');
    await page.getByRole('button', { name: 'Previous page' }).click();
    await page.getByRole('img', { name: 'Page 1 of the copy, as it is handed over' }).waitFor();
    await expect.poll(() => darkness(0.5, 0.43), { timeout: 20_000 }).toBeLessThan(10);

    await page.getByRole('button', { name: 'Done' }).press('Enter');
    await page.getByText('2 parts of it are black in what is handed over.').waitFor();
    await sample.axeAtEverySize('paper with marks');
    await page.getByRole('button', { name: 'Black parts out' }).click();
    await page.getByRole('button', { name: 'Take all marks away' }).press('Enter');
    await page.getByRole('status').filter({ hasText: 'invoice.pdf: nothing is blacked out any more.' }).first().waitFor();
    expect(await marks()).toEqual([]);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await marks()).length).toBe(2);
    await page.getByRole('button', { name: /^Part 1 on page 1/ }).waitFor();
    expect(sample.complaints).toEqual([]);
  }, 240_000);

  test('moves with the paper when it is turned, and a mark can be dragged and sized by its corner', async () => {
    const { page } = sample;
    await sample.must('paper.redact', { paper, marks: [{ page: 1, left: 0.1, top: 0.2, width: 0.3, height: 0.1 }] });
    await page.reload();
    await page.getByRole('region', { name: 'The paper' }).press('r');
    await page.locator('[role=region] img[data-turned="90"]').waitFor();
    await page.getByRole('button', { name: 'Black parts out' }).click();
    const part = page.getByRole('button', { name: 'Part 1 on page 1: 70 % from the left, 10 % from the top, 10 % wide, 30 % high' });
    await part.scrollIntoViewIfNeeded();
    await expect.poll(async () => (await part.boundingBox())?.width ?? 0).toBeGreaterThan(20);
    const box = must(await part.boundingBox(), 'mark');
    const frame = must(await part.locator('..').boundingBox(), 'page');
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 - 0.2 * frame.width, box.y + box.height / 2 + 0.1 * frame.height, { steps: 4 });
    await page.mouse.up();
    await page.getByRole('button', { name: 'Part 1 on page 1: 50 % from the left, 20 % from the top, 10 % wide, 30 % high' }).waitFor();
    const moved = must(await page.getByRole('button', { name: /^Part 1 on page 1/ }).boundingBox(), 'mark');
    await page.mouse.move(moved.x + moved.width, moved.y + moved.height);
    await page.mouse.down();
    await page.mouse.move(moved.x + moved.width + 0.2 * frame.width, moved.y + moved.height - 0.1 * frame.height, { steps: 4 });
    await page.mouse.up();
    await page.getByRole('button', { name: 'Part 1 on page 1: 50 % from the left, 20 % from the top, 30 % wide, 20 % high' }).waitFor();
    await picture('turned');
    await page.getByRole('button', { name: 'Leave without keeping' }).click();
    await page.getByRole('region', { name: 'The paper' }).waitFor();
    expect(await marks()).toEqual([{ page: 1, left: 0.7, top: 0.1, width: 0.1, height: 0.3 }]);
    expect(sample.complaints).toEqual([]);
  }, 120_000);

  test('is told on the Handover screen, which leads to each such paper', async () => {
    const { page } = sample;
    const { cars } = await sample.must('due.show', {});
    const car = must(cars[0], 'car');
    await sample.must('paper.tie', { paper, to: [{ kind: 'car', id: car.id }] });
    await page.getByRole('navigation').getByRole('link', { name: 'Handover', exact: true }).click();
    await page.getByRole('combobox', { name: 'Car', exact: true }).selectOption(car.id);
    const link = page.getByRole('link', { name: '1 part blacked out of invoice.pdf' });
    await link.waitFor();
    await page.getByRole('checkbox', { name: 'Name the papers that copies with black parts were made from' }).waitFor();
    await sample.axeAtEverySize('handover');
    await link.scrollIntoViewIfNeeded();
    await picture('handover');
    await page.getByRole('button', { name: 'Look at it first' }).click();
    await page.getByText(/^Parts of data\/papers\/\d{4}-parts-blacked-out\.pdf, blacked out by the keeper in a copy: 1 on page 1\.$/).waitFor({ timeout: 60_000 });
    await picture('preview');
    await link.click();
    await page.getByRole('heading', { name: 'invoice.pdf', level: 1 }).waitFor();
    expect(sample.complaints).toEqual([]);
  }, 120_000);
});
