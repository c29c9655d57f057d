import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { day, openTestHost, temporaryFolder } from '../host/open-test-host.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openServedPage, type ServedPage } from './served-page.ts';
import { soundAtEverySize } from './sound-at-every-size.ts';

/** A household with a car that came with an earlier keeper's pack, which withholds who did the work, and with one of its own. */
async function fill(folder: string): Promise<void> {
  const first = openTestHost({ on: '2025-03-02' });
  await first.must('household.start', { name: 'First' });
  await first.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: day('2020-11-25'), keptSince: day('2020-11-25') });
  await first.must('record.add', { car: 'pip', date: day('2024-03-01'), place: 'home', title: 'Bulb', doneBy: 'Somebody', reading: { value: 31_000, unit: 'km' }, lines: [{ name: 'Bulb' }] });
  const { path } = await first.must('pack.write', { car: 'pip', out: temporaryFolder(), withhold: ['doneBy'] });
  const host = openTestHost({ folder });
  await host.must('household.start', { name: 'Second' });
  const { car } = await host.must('pack.take-in', { pack: path });
  await host.must('record.add', { car: car.id, date: day('2026-03-01'), title: 'Wiper', lines: [{ name: 'Wiper' }] });
  await host.must('car.add', { id: 'moth', name: 'Moth' });
  await host.composed.close();
}

describe.skipIf(chromiumHere === null)('a car that came with the pack of an earlier keeper', { timeout: 180_000 }, () => {
  let served: ServedPage;
  beforeAll(async () => {
    served = await openServedPage({ fill });
  }, 120_000);
  afterAll(() => served.close());

  test('its records and readings are marked as that keeper’s on the car’s page, and the record’s own page says so', async () => {
    const { page, complaints } = served;
    await page.getByRole('navigation').getByRole('link', { name: 'Car', exact: true }).click();
    await page.getByRole('link', { name: 'Pip', exact: true }).click();
    await page.getByRole('heading', { name: 'Pip', level: 1 }).waitFor();
    await page.getByRole('link', { name: 'Care', exact: true }).click();
    const entry = (title: string) => page.getByRole('listitem').filter({ has: page.getByRole('link', { name: title, exact: true }) });
    expect(await entry('Bulb').first().innerText()).toMatch(/earlier keeper · .*withheld by the earlier keeper: Who did the work/s);
    expect(await entry('Wiper').first().innerText()).not.toContain('earlier keeper');
    expect(await page.getByRole('row').filter({ hasText: '1 Mar 2024' }).first().innerText()).toContain('earlier keeper');
    await soundAtEverySize(page, 'records of an earlier keeper');
    await page.getByRole('link', { name: 'Bulb', exact: true }).click();
    await page.getByRole('heading', { name: '1 Mar 2024: Bulb', level: 1 }).waitFor();
    await page.getByText('This was written by an earlier keeper and is kept as it was. Write a record of your own beside it.').waitFor();
    expect(await page.getByRole('main').innerText()).toMatch(/Written by\s+earlier keeper.*Withheld by the earlier keeper\s+Who did the work/s);
    expect(await page.getByRole('main').innerText()).toContain('Who did it · withheld by the earlier keeper');
    expect(await page.getByRole('button', { name: 'Amend it' }).count()).toBe(0);
    await soundAtEverySize(page, 'a record of an earlier keeper');
    expect(complaints).toEqual([]);
  });

  test('its pack says of the earlier one that it goes along or is left out: asked only where there is one, and needed only where something is withheld', async () => {
    const { page, complaints } = served;
    const ticks = page.getByRole('group', { name: /^Earlier keepers: pip-history-2025-03-02/ });
    const [whole, left] = [ticks.getByRole('checkbox', { name: 'Goes along whole, with what is withheld here' }), ticks.getByRole('checkbox', { name: 'Is left out; what came with it is then not proven' })];
    const states = async () => [await whole.isChecked(), await left.isChecked()];
    await page.getByRole('navigation').getByRole('link', { name: 'Handover', exact: true }).click();
    await page.getByRole('navigation', { name: 'Handover' }).getByRole('link', { name: 'Write a pack', exact: true }).click();
    const car = page.getByRole('combobox', { name: 'Car', exact: true });
    await car.selectOption({ label: 'Moth' });
    await page.getByRole('group', { name: 'Kept back' }).waitFor();
    await ticks.waitFor({ state: 'detached' });
    await car.selectOption({ label: 'Pip' });
    await ticks.waitFor();
    expect(await states()).toEqual([false, false]);

    const prices = page.getByRole('checkbox', { name: 'Keep prices back' });
    if (!(await prices.isChecked())) await prices.click();
    await page.getByRole('button', { name: 'Write the pack' }).click();
    await page.getByText(/^The pack pip-history-2025-03-02 of an earlier keeper goes along whole and unaltered/).first().waitFor();
    expect(await page.getByText(/^The pack is written/).count()).toBe(0);
    expect([await whole.getAttribute('aria-invalid'), await left.getAttribute('aria-invalid')]).toEqual(['true', 'true']);
    await soundAtEverySize(page, 'what is to be said of the earlier pack');

    await whole.press('Space');
    expect(await states()).toEqual([true, false]);
    await left.press('Space');
    expect(await states()).toEqual([false, true]);
    await page.getByRole('button', { name: 'Look at it first' }).click();
    await page.getByText(/^The packs of earlier keepers \(pip-history-2025-03-02\)/).waitFor();
    await whole.press('Space');
    await page.getByRole('button', { name: 'Look at it first' }).click();
    await page.getByText(/^Nothing of what an earlier keeper handed over: that pack goes along whole/).waitFor();
    await page.getByRole('button', { name: 'Write the pack' }).click();
    await page.getByText(/^The pack is written: \d+ files\.$/).waitFor();

    // Where nothing is withheld, nothing needs to be said.
    await whole.press('Space');
    await prices.click();
    expect(await states()).toEqual([false, false]);
    await page.getByRole('button', { name: 'Look at it first' }).click();
    await page.getByRole('heading', { name: 'What it will hold' }).waitFor();
    expect(await page.getByText(/^(Nothing of what|The packs of) (an )?earlier keeper/).count()).toBe(0);
    expect(complaints).toEqual([]);
  });
});
