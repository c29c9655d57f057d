import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { OperationName, RequestOf } from '../../shared-core/contract/contract.ts';
import { mustAsk } from './ask-host.ts';
import { Keyboard } from './keyboard.ts';
import { chromiumHere } from './launch-chromium.ts';
import { hearComplaints, startHousehold } from './served-page.ts';
import { openShell } from './shells/open-shell.ts';
import type { Shell } from './shells/shell.ts';
import { soundAtEverySize } from './sound-at-every-size.ts';

const DAY = '2026-11-25';

/** One session from its plan to its record by the keyboard alone, with the host killed in the middle; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('a whole session', { timeout: 180_000 }, () => {
  const folder = mkdtempSync(join(tmpdir(), 'whole-session-'));
  const household = join(folder, 'household');
  const complaints: string[] = [];
  let shell: Shell;
  let page: Page;
  let keys: Keyboard;

  const open = async () => {
    shell = await openShell({ household, on: DAY, context: { locale: 'en-GB', viewport: { width: 1280, height: 800 } }, onPage: (opened) => hearComplaints(opened, complaints) });
    page = shell.page;
    keys = new Keyboard(page);
  };
  const must = <Name extends OperationName>(name: Name, request: RequestOf<Name>) => mustAsk(page, name, request);
  const card = () => page.locator('section[data-ticked]');
  const at = (text: string) => card().getByRole('heading', { name: text }).waitFor();
  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).first().waitFor();

  beforeAll(async () => {
    await open();
    await startHousehold(page);
    const interval = { repeat: { months: 12, distance: { value: 15_000, unit: 'km' as const } } };
    await must('car.add', { id: 'pip', name: 'Pip', power: 'petrol', unit: 'km', year: 2021, firstRegistered: '2021-03-01' as never });
    await must('reading.record', { car: 'pip', value: 40_000, unit: 'km', date: '2025-11-01' as never });
    await must('reading.record', { car: 'pip', value: 52_000, unit: 'km', date: '2026-11-20' as never });
    await must('specification.set', { id: 'oil-a', name: 'oil A', unit: 'litre' });
    await must('part.set', { id: 'can', name: 'can of oil', meets: ['oil-a'] });
    await must('lot.set', { id: 'lot-1', part: 'can', quantity: 5, receivedOn: '2026-10-02' as never, where: 'shelf, floor' });
    await must('item.add', { id: 'oil', car: 'pip', name: 'Engine oil', interval, minutes: 45, needs: [{ specification: 'oil-a', quantity: 4 }] });
    await must('item.add', { id: 'pads', car: 'pip', name: 'Brake pads', work: 'check', interval, minutes: 20 });
    await must('record.add', { car: 'pip', date: '2025-11-01' as never, lines: [{ item: 'oil' }, { item: 'pads', outcome: 'good' }] });
    await must('sheet.set', { item: 'oil', checks: ['No drop below the engine'], followUps: [{ text: 'Oil level once more', days: 1, distance: null }], steps: [
      { text: 'Let the oil out.', turn: 'drain', hazards: ['hot', 'used-oil'], disposal: ['used-oil'] },
      { text: 'Put the drain plug back.', turn: 'drain', torques: [{ by: 'own', name: 'Drain plug', typed: { value: 30, unit: 'Nm' }, source: 'the sample handbook' }] },
      { text: 'Fill the new oil in.', turn: 'fill' },
    ] });
    await must('sheet.set', { item: 'pads', steps: [{ text: 'Measure the outer pad.', hazards: ['brakes', 'lifting'], measure: { kind: 'pad', name: null, place: 'front-left' } }] });
  });
  afterAll(async () => {
    await shell.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  test('is planned and kept', async () => {
    await keys.press('Sessions');
    await page.getByRole('heading', { name: 'Sessions', level: 1 }).waitFor();
    await page.getByRole('button', { name: 'Propose sessions' }).waitFor();
    await keys.press('Propose sessions');
    await page.getByRole('button', { name: /^Keep the proposed one$/ }).waitFor({ timeout: 60_000 });
    await keys.press('Keep the proposed one');
    await said('1 session is kept.');
    const [session] = (await must('sessions.show', {})).sessions;
    expect(session?.tasks.map((one) => one.task.id).sort()).toEqual(['oil', 'pads']);
  });

  test('its sheet is printed', async () => {
    await keys.press(/^Job sheet: /);
    await page.getByRole('heading', { name: /^Job sheet: /, level: 1 }).waitFor();
    await page.evaluate(() => {
      const told = window as unknown as { printed: number };
      told.printed = 0;
      window.print = () => void (told.printed += 1);
    });
    await page.getByRole('region', { name: 'Pip' }).waitFor();
    await keys.press('Print');
    await expect.poll(() => page.evaluate(() => (window as unknown as { printed: number }).printed)).toBe(1);
    await page.goBack();
  });

  test('begins with its cautions, and no step is to be seen before they were read', async () => {
    await page.getByRole('heading', { name: 'Sessions', level: 1 }).waitFor();
    await keys.press(/^Work through it: /);
    const before = page.getByRole('region', { name: 'Before the first step' });
    await before.getByText('Lifting: A car that falls kills.').waitFor();
    await before.getByText('Brakes, skilled person: Lives hang on the brakes.').waitFor();
    expect(await page.getByText('Let the oil out.').count()).toBe(0);
    await soundAtEverySize(page, 'before the work');
    await keys.press('I have read them: begin');
    await at('Let the oil out.');
  });

  test('is ticked by the space bar, timed, and what is read is written down', async () => {
    await card().getByText('Hot oil, coolant, steam and exhaust scald').waitFor();
    await keys.press('Run the time');
    await page.getByRole('button', { name: 'Pause the time' }).waitFor();
    await soundAtEverySize(page, 'a step');
    await card().focus();
    await page.keyboard.press('Space');
    await at('Put the drain plug back.');
    await keys.press('Drain plug: tightened to 30 N·m');
    await card().getByText('Written down: 30 N·m').waitFor();
    await soundAtEverySize(page, 'a step with a torque');
    await card().focus();
    await page.keyboard.press('Space');
    await at('Measure the outer pad.');
    await keys.fill('Lining thickness, front left', '61');
    await keys.press('Write down');
    await card().getByText(/mm/).first().waitFor();
    await expect.poll(() => card().locator('[aria-invalid=true]').count()).toBe(1);
    await keys.fill('Lining thickness, front left', '5.5');
    await keys.press('Write down');
    await card().getByText('Written down: 5.5 mm').waitFor();
  });

  test('something found is noted with two presses', async () => {
    await keys.press('Found something');
    await soundAtEverySize(page, 'something found');
    await keys.press('Soon: look again in a month');
    await said('Noted: Something seen at “Measure the outer pad.”. Look again on 25 Dec 2026.');
    await page.getByRole('status').filter({ hasText: '2 of 5 ticked · 1 thing found' }).waitFor();
  });

  test('what was found is put into words, and made graver', async () => {
    await keys.press(/^Change what was seen: Something seen at/);
    await page.getByRole('dialog').getByRole('combobox').first().selectOption('unsafe');
    await page.getByRole('dialog').getByRole('textbox').first().fill('Hose chafed through');
    await soundAtEverySize(page, 'changing what was found');
    await page.getByRole('button', { name: 'Keep the change' }).click();
    await said('It reads now: Hose chafed through');
    await page.getByRole('list', { name: 'What was found' }).getByText('Hose chafed through').waitFor();
    expect((await must('car.show', { car: 'pip' })).observations).toMatchObject([{ text: 'Hose chafed through', severity: 'unsafe' }]);
  });

  test('the host is killed; opened again it goes on at the very step, and nothing is lost', async () => {
    await shell.kill();
    if (shell.pageOutlivesProgram) {
      await card().focus();
      await page.keyboard.press('Space');
      await page.getByRole('alert').filter({ hasText: 'Not written, so nothing is ticked' }).waitFor();
      await at('Measure the outer pad.');
    }
    await shell.stop();
    complaints.length = 0;
    await open();
    await keys.press('Sessions');
    await page.getByRole('heading', { name: 'Sessions', level: 1 }).waitFor();
    await page.getByRole('link', { name: /^Work through it: / }).waitFor();
    await keys.press(/^Work through it: /);
    await at('Measure the outer pad.');
    await card().getByText('Written down: 5.5 mm').waitFor();
    await page.getByRole('button', { name: 'Pause the time' }).waitFor();
    await page.getByRole('status').filter({ hasText: '2 of 5 ticked · 1 thing found' }).waitFor();
  });

  test('the record is begun half-way and left again', async () => {
    await page.evaluate((path) => {
      history.pushState(null, '', path);
      dispatchEvent(new PopStateEvent('popstate'));
    }, `/sessions/${sessionId(page)}/close`);
    await page.getByRole('heading', { name: /^Write the record: /, level: 1 }).waitFor();
    await page.getByText('2 of 4 steps ticked').waitFor();
    expect(await page.getByLabel('can of oil, litre').count()).toBe(0);
    await keys.fill('The odometer showed (km)', '52100');
    await keys.press('Back to the steps');
    await at('Measure the outer pad.');
  });

  test('a step is left out with its reason, and the rest is ticked', async () => {
    await card().focus();
    await page.keyboard.press('Space');
    await at('Fill the new oil in.');
    await page.keyboard.press('Space');
    await at('No drop below the engine');
    await keys.press('Leave it out');
    await page.getByLabel('Why is it left out? It stands in the record.').fill('raining');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await must('work.show', { session: sessionId(page) })).steps.filter((one) => one.tick === null).length).toBe(0);
  });

  test('is finished: the record, the shelf and the windows are right', async () => {
    await page.getByRole('heading', { name: /^All \d are ticked$/ }).waitFor();
    await keys.press('Write the record');
    await page.getByRole('heading', { name: /^Write the record: /, level: 1 }).waitFor();
    // What was worked since the record was begun is in it, beside what was typed then.
    await page.getByText('3 of 4 steps ticked · 1 left out').waitFor();
    expect(await page.getByLabel('The odometer showed (km)').inputValue()).toBe('52100');
    expect(await page.getByRole('checkbox', { name: /^(?!Of the new part).*5\.5 mm$/ }).isChecked()).toBe(true);
    expect(await page.getByLabel('Outcome of Brake pads').inputValue()).toBe('watch');
    expect(await page.getByLabel('Outcome of Engine oil').inputValue()).toBe('');
    await soundAtEverySize(page, 'writing the record');
    await keys.fill('Minutes it took: Brake pads', '15');
    const form = page.locator('form');
    await form.getByRole('button', { name: 'Write the record' }).click();
    await page.getByRole('alert').filter({ hasText: 'Some of its steps were done and some were not. Say how it went.' }).first().waitFor();
    await page.getByLabel('Outcome of Engine oil').selectOption('done');
    await page.getByLabel('can of oil, litre').waitFor();
    expect(await page.getByRole('checkbox', { name: 'Used oil' }).isChecked()).toBe(true);
    await keys.fill('Minutes it took: Engine oil', '50');
    await keys.fill('Minutes it took: Brake pads', '15');
    await keys.press('Write the record');
    await said('1 record is written, and the session is closed.');
    await page.getByRole('heading', { name: 'Sessions', level: 1 }).waitFor();
    const car = await must('car.show', { car: 'pip' });
    const record = car.records.find((one) => one.record.date === DAY)?.record;
    expect(record?.lines.map(({ item, outcome, minutes }) => [item, outcome, minutes])).toEqual([['oil', 'done', 50], ['pads', 'watch', 15]]);
    expect(record?.lines[0]?.note).toContain('Drain plug 30 N·m');
    expect(record?.lotsUsed).toEqual([{ lot: 'lot-1', quantity: 4 }]);
    const due = await must('due.show', {});
    expect(due.cars[0]?.windows.map(({ item, state, latest }) => [item, state, latest])).toEqual(expect.arrayContaining([['oil', 'ahead', '2027-11-25'], ['pads', 'ahead', '2027-11-25']]));
    expect((await must('parts.show', {})).shelf.find((one) => one.lot.id === 'lot-1')?.left).toBe(1);
    expect((await must('sessions.show', {})).sessions).toEqual([]);
    expect(keys.faults).toEqual([]);
    expect(complaints).toEqual([]);
  });
});

function sessionId(page: Page): string {
  return new URL(page.url()).pathname.split('/')[2] ?? '';
}
