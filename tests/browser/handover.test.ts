import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { must } from '../../shared-core/result/assert.ts';
import { temporaryFolder } from '../host/open-test-host.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

describe.skipIf(chromiumHere === null)('the Handover screen', () => {
  let sample: SamplePage;
  beforeAll(async () => {
    sample = await openSamplePage();
  });
  afterAll(() => sample.close());

  const leaf = async (name: string) => {
    await sample.page.getByRole('navigation', { name: 'Handover' }).getByRole('link', { name, exact: true }).press('Enter');
    await sample.page.locator('a[aria-current=page]', { hasText: name }).waitFor();
  };

  test('a seal is given, a pack is looked at, written and checked, one that was changed is named, and a car leaves and comes back', async () => {
    const { page } = sample;
    await page.getByRole('navigation').getByRole('link', { name: 'Handover', exact: true }).click();
    await page.getByRole('heading', { name: 'Handover', level: 1 }).waitFor();

    await leaf('Seal');
    await page.getByRole('button', { name: /^Give a seal over/ }).press('Enter');
    await page.getByRole('button', { name: 'Give the seal', exact: true }).press('Enter');
    await page.getByRole('img', { name: 'The same seal as a QR code' }).waitFor();
    const seal = await page.getByLabel('Seal of the journal', { exact: true }).first().innerText();
    expect(seal).toMatch(/^TRUNNION SEAL 1/);
    await sample.axeAtEverySize('seal');

    await leaf('Write a pack');
    await page.getByRole('button', { name: 'None', exact: true }).press('Enter');
    await page.getByRole('checkbox', { name: 'Keep prices back' }).press('Space');
    await page.getByRole('button', { name: 'Look at it first' }).press('Enter');
    await page.getByRole('heading', { name: 'What it will hold' }).waitFor();
    await page.getByText(/^Of the entries: /).waitFor();
    await page.getByRole('img', { name: 'Page 1 of the document' }).waitFor();
    await page.getByRole('region', { name: 'Pages of the document' }).press('ArrowRight');
    await page.getByRole('img', { name: 'Page 2 of the document' }).waitFor();
    await page.waitForFunction(() => [...document.querySelectorAll<HTMLImageElement>('[role=region] img')].every((image) => image.complete && image.naturalWidth > 300));
    await sample.axeAtEverySize('write');
    // Another choice, and what was looked at is no longer it.
    await page.getByRole('checkbox', { name: 'Keep registration, VIN and stated yearly distance back' }).click();
    expect(await page.getByRole('heading', { name: 'What it will hold' }).count()).toBe(0);
    await page.getByRole('button', { name: 'Write the pack' }).click();
    await page.getByText(/^The pack is written: \d+ files\.$/).waitFor();
    const path = await page.locator('dd').filter({ hasText: '.zip' }).innerText();

    await leaf('Check a pack');
    await page.getByRole('button', { name: 'Check it' }).press('Enter');
    await page.getByText('Choose the ZIP of the pack first.').waitFor();
    const altered = join(temporaryFolder(), 'altered.zip');
    const bytes = readFileSync(path);
    const at = bytes.indexOf('trunnion-history-1');
    bytes.writeUInt8(bytes.readUInt8(at) ^ 1, at);
    writeFileSync(altered, bytes);
    await page.locator('input[type=file]').setInputFiles(altered);
    await page.getByRole('button', { name: 'Check it' }).click();
    await page.getByRole('heading', { name: /^The pack is not sound/ }).waitFor();
    await page.getByRole('cell', { name: 'data/history.json' }).first().waitFor();
    expect(await page.getByRole('button', { name: 'Take the car in' }).count()).toBe(0);
    await sample.axeAtEverySize('check');
    await page.locator('input[type=file]').setInputFiles(path);
    await page.getByRole('textbox', { name: /^Seal given to you before/ }).fill(seal);
    await page.getByRole('button', { name: 'Check it' }).press('Enter');
    await page.getByRole('heading', { name: 'The pack is sound' }).waitFor();
    await page.getByRole('button', { name: 'Take the car in' }).waitFor();

    await leaf('A car leaves');
    const { lanes } = await sample.must('yard.show', {});
    const car = must(lanes[0], 'car');
    await page.getByRole('combobox', { name: 'Which car leaves' }).selectOption(car.id);
    await page.getByRole('heading', { name: `${car.name} leaves` }).waitFor();
    await sample.axeAtEverySize('leave');
    await page.getByRole('textbox', { name: /^What it brought/ }).fill('1250');
    await page.getByRole('button', { name: 'It has left' }).press('Enter');
    await page.getByText(`${car.name} was sold on 25 Nov 2026.`).waitFor();
    await page.locator('li', { hasText: 'sold on 25 Nov 2026' }).getByRole('link', { name: car.name, exact: true }).click();
    await page.getByText('Sold on 25 Nov 2026. Nothing of this car is due any more.').waitFor();
    await page.getByRole('link', { name: 'Cars that left' }).press('Enter');
    await sample.axeAtEverySize('left');
    await page.getByRole('button', { name: `It has not left after all: ${car.name}` }).press('Enter');
    await page.getByText(`${car.name} is here again.`).waitFor();
    expect((await sample.must('yard.show', {})).lanes.map((one) => one.id)).toContain(car.id);
    expect(sample.complaints).toEqual([]);
  }, 300_000);
});
