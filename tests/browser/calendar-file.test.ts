import { readFileSync } from 'node:fs';
import ICAL from 'ical.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { mustAsk } from './ask-host.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openServedPage, startHousehold, type ServedPage } from './served-page.ts';

describe.skipIf(chromiumHere === null)('the calendar file of the settings', () => {
  let served: ServedPage;

  beforeAll(async () => {
    served = await openServedPage();
    await startHousehold(served.page);
  });
  afterAll(() => served.close());

  test('is saved with the button, and another program reads it', async () => {
    const { page } = served;
    await mustAsk(page, 'car.add', { id: 'pip', name: 'Pip' });
    await mustAsk(page, 'obligation.add', { id: 'tax', car: 'pip', kind: 'road-tax', lastValidDay: '2027-03-31' as never });
    await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: 'Settings' }).click();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save a calendar file' }).press('Enter');
    const saved = await download;
    expect(saved.suggestedFilename()).toBe('trunnion-calendar.ics');
    const [event] = new ICAL.Component(ICAL.parse(readFileSync(await saved.path(), 'utf8')) as unknown[]).getAllSubcomponents('vevent');
    expect([event?.getFirstPropertyValue('summary'), String(event?.getFirstPropertyValue('dtstart'))]).toEqual(['Pip: road tax, last valid day', '2027-03-31']);
    await page.getByRole('status').filter({ hasText: '1 event in trunnion-calendar.ics.' }).waitFor();
    expect(served.complaints).toEqual([]);
  });
});
