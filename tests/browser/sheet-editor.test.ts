import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { must } from '../../shared-core/result/assert.ts';
import { axeFaults } from './axe-faults.ts';
import { Keyboard } from './keyboard.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

/** The page on which the sheet of a task is written; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('the sheet of a task', { timeout: 180_000 }, () => {
  let sample: SamplePage;
  let page: Page;

  beforeAll(async () => {
    sample = await openSamplePage();
    page = sample.page;
  });
  afterAll(() => sample.close());

  const item = 'pip-brake-fluid';
  const standing = async () => must((await sample.must('sheet.editing', { item })).sheet, 'the sheet that stands');
  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).first().waitFor();
  const named = () => page.evaluate(() => (document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '').slice(0, 80));
  const button = (name: string) => page.getByRole('button', { name, exact: true });
  const row = (text: string) => page.getByRole('form').getByRole('listitem').filter({ hasText: text });
  const save = () => button('Save the sheet').click();
  const go = async (path: string, title: string) => {
    await page.evaluate((to) => history.pushState(null, '', to), path);
    await page.getByRole('heading', { name: title, level: 1 }).waitFor();
  };

  test('is changed by the keyboard alone: moved, removed and put back, added to, saved; the steps keep their ids', async () => {
    const before = (await standing()).steps;
    await sample.goTo('Pip', 'Care');
    const keys = new Keyboard(page);
    await keys.press('Task sheet: brake fluid');
    await page.getByRole('heading', { name: 'Task sheet: brake fluid, Pip', level: 1 }).waitFor();
    await expect.poll(named).toBe('Task sheet: brake fluid, Pip');
    await button('Change step 1').waitFor();
    // The focus goes with the step that is moved.
    await keys.press('Move step 2 down');
    await expect.poll(named).toBe('Move step 3 down');
    await said(`It is step 3 of ${before.length} now.`);
    await keys.press('Remove step 3');
    await expect.poll(named).toBe('Put it back');
    await page.getByText(`Removed: ${before[1]?.text}`).waitFor();
    await keys.press('Put it back');
    await expect.poll(named).toBe('Change step 3');
    await keys.press('Add a step');
    await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLTextAreaElement | null)?.labels[0]?.textContent)).toBe('What is done');
    await page.keyboard.type('Look at the level after a week.');
    await page.getByText('Changes are not saved yet.').waitFor();
    await keys.press('Save the sheet');
    await said('The sheet of “brake fluid” is saved.');
    await expect.poll(named).toBe('Save the sheet');
    const after = (await standing()).steps;
    expect(after.slice(0, -1).map((step) => step.id)).toEqual([before[0], before[2], before[1], ...before.slice(3)].map((step) => step?.id));
    expect(after.at(-1)).toMatchObject({ text: 'Look at the level after a week.', turn: before.at(-1)?.turn });
    expect(before.map((step) => step.id)).not.toContain(after.at(-1)?.id);
    expect(keys.faults).toEqual([]);
  });

  test('is put back by Undo, and the page follows', async () => {
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => row('Look at the level after a week.').count()).toBe(0);
    await page.getByText('All of it is saved.').waitFor();
  });

  test('an unlikely torque is asked about once it is saved, and the answer is saved', async () => {
    await button('Change step 1').click();
    const form = row('What is done').first();
    await form.locator('summary', { hasText: 'Torques' }).click();
    await button('Add a torque').click();
    await form.getByLabel('Torque on the data card').selectOption({ label: 'a value of this sheet alone, with its source' });
    await form.getByLabel('What is tightened').fill('Caliper bracket bolts');
    await form.getByLabel('Value').fill('ten');
    await form.getByLabel('Thread').fill('m12 × 1,5');
    await form.getByLabel('Class on the bolt’s head').selectOption('8.8');
    await save();
    // What cannot be read is refused at its field, and nothing typed is lost.
    await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement | null)?.value)).toBe('ten');
    await page.getByRole('alert').filter({ hasText: 'Not saved.' }).waitFor();
    expect(await form.getByLabel('What is tightened').inputValue()).toBe('Caliper bracket bolts');
    await form.getByLabel('Value').fill('10');
    await save();
    // The host refuses a torque without its source, at that field.
    await expect.poll(() => form.getByLabel('Where it stands').evaluate((field) => field === document.activeElement && field.getAttribute('aria-invalid'))).toBe('true');
    await page.keyboard.type('sample sheet, page 9');
    await save();
    await said('is saved; 1 torque on it is asked about.');
    // By hand: 0.6 x 74 = 44.4 N m is the least that is not asked about for M12 of 8.8 (reference section 5c).
    await page.getByText(/^10 N·m is little for M12x1.5: /).first().waitFor();
    expect((await standing()).steps[0]?.torques).toMatchObject([{ by: 'own', typed: { value: 10, unit: 'Nm' }, on: { thread: 'M12x1.5' }, sure: false }]);
    await button('Close this step: 1').click();
    await expect.poll(named).toBe('Change step 1');
    await page.getByRole('button', { name: /^It is so/ }).click();
    await expect.poll(named).toBe('Change step 1');
    await save();
    await said('The sheet of “brake fluid” is saved.');
    await expect.poll(async () => (await standing()).steps[0]?.torques).toMatchObject([{ sure: true }]);
    await expect.poll(() => page.getByText(/^10 N·m is little/).count()).toBe(0);
  });

  test('a figure of the card is chosen from its list; a new one is named here and asked for on the card', async () => {
    await button('Change step 2').click();
    const form = row('What is done').first();
    await form.locator('summary', { hasText: 'Torques' }).click();
    await button('Add a torque').click();
    await form.getByLabel('Torque on the data card').selectOption('oil-drain-torque');
    await button('Add a torque').click();
    await form.getByLabel('Torque on the data card').nth(1).selectOption({ label: 'a figure of my own, new on the card' });
    await form.getByLabel('What the new figure is called').fill('Reservoir screws');
    await save();
    await said('The sheet of “brake fluid” is saved.');
    expect((await standing()).steps[1]?.torques).toMatchObject([{ by: 'figure', figure: 'oil-drain-torque', name: null }, { by: 'figure', name: 'Reservoir screws' }]);
    await page.getByRole('link', { name: 'Enter it on the data card: Reservoir screws' }).click();
    await page.getByRole('button', { name: /^Enter.*Reservoir screws/ }).click();
    const card = page.getByRole('form').or(page.locator('form')).first();
    await card.getByLabel('Value').fill('6');
    await card.getByRole('button', { name: 'Save', exact: true }).click();
    await said('is on the card.');
    await go(`/car/pip/sheet/${item}`, 'Task sheet: brake fluid, Pip');
    await row('Reservoir screws: 6 N·m').waitFor();
    await expect.poll(() => page.getByRole('link', { name: 'Enter it on the data card: Reservoir screws' }).count()).toBe(0);
  });

  test('the cautions beside follow what is saved', async () => {
    const beside = page.getByRole('region', { name: 'Before the first step' });
    expect(await beside.getByText('Airbag, licensed person:').count()).toBe(0);
    await page.getByRole('form').getByRole('group', { name: 'What can hurt throughout' }).getByLabel('Airbag').check();
    await beside.getByText('As it was saved last; saving brings it up to date.').waitFor();
    expect(await beside.getByText('Airbag, licensed person:').count()).toBe(0);
    await save();
    await beside.getByText('Airbag, licensed person:').waitFor();
    // The gravest stands before the others, after what holds for all work.
    expect(await beside.getByRole('listitem').nth(1).textContent()).toMatch(/^Airbag, licensed person: /);
  });

  test('is sound to axe at every size, in light and dark, with a step open', async () => {
    await button('Change step 1').click();
    await sample.axeAtEverySize('the sheet of a task');
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await axeFaults(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'light' });
    await button('Close this step: 1').click();
  });

  test('asks before changes are left, by a link and by the way back', async () => {
    const asked = page.getByRole('dialog', { name: 'Leave without saving?' });
    const note = page.getByLabel('Note', { exact: true });
    await note.fill('not kept');
    await page.getByRole('navigation').getByRole('link', { name: 'Yard' }).click();
    await asked.getByRole('button', { name: 'Stay here', exact: true }).last().click();
    await asked.waitFor({ state: 'hidden' });
    expect(await note.inputValue()).toBe('not kept');
    await page.evaluate(() => history.back());
    await asked.waitFor();
    await page.keyboard.press('Escape');
    await asked.waitFor({ state: 'hidden' });
    expect([await note.inputValue(), new URL(page.url()).pathname]).toEqual(['not kept', `/car/pip/sheet/${item}`]);
    await page.getByRole('navigation').getByRole('link', { name: 'Yard' }).click();
    await asked.getByRole('button', { name: 'Leave without saving' }).click();
    await page.getByRole('heading', { name: 'The yard' }).waitFor();
    expect((await standing()).note).not.toBe('not kept');
    await go(`/car/pip/sheet/${item}`, 'Task sheet: brake fluid, Pip');
    await note.fill('kept');
    await page.getByRole('navigation').getByRole('link', { name: 'Yard' }).click();
    await asked.getByRole('button', { name: 'Save and go on' }).click();
    await page.getByRole('heading', { name: 'The yard' }).waitFor();
    expect((await standing()).note).toBe('kept');
  });

  test('is begun from a starting sheet, from nothing, and from the same task on another car', async () => {
    await sample.must('item.add', { id: 'pip-hoses', car: 'pip', name: 'Rubber brake hoses', interval: { repeat: { months: 72, distance: null } } });
    await go('/car/pip/sheet/pip-hoses', 'Task sheet: Rubber brake hoses, Pip');
    const begin = page.getByRole('region', { name: 'Nobody has written this sheet yet' });
    await begin.getByRole('button', { name: 'Begin from it' }).click();
    await said(/The sheet of “Rubber brake hoses” is begun from/);
    await expect.poll(named).toBe('Task sheet: Rubber brake hoses, Pip');
    await button('Change step 2').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await begin.waitFor();
    await begin.getByText(/torque that was entered on the sheet of Wren alone is not copied/).waitFor();
    await begin.getByRole('button', { name: 'Copy it' }).click();
    await said('The sheet of “Rubber brake hoses” is copied from Wren.');
    await said(/^Read the copy through for Pip.*Not copied, for they are the other car’s: /);
    const { sheet } = await sample.must('sheet.editing', { item: 'pip-hoses' });
    expect(sheet?.steps.flatMap((step) => step.torques).filter((one) => one.by === 'own')).toEqual([]);
    expect(sheet?.steps.length).toBe(9);
    await button('Remove the whole sheet').click();
    await said('The sheet of “Rubber brake hoses” is removed.');
    await begin.waitFor();
    await save();
    await page.getByText('A sheet has one step at least.').first().waitFor();
    await button('Write the first step').click();
    await page.keyboard.type('My own way.');
    await save();
    await said('The sheet of “Rubber brake hoses” is saved.');
    await expect.poll(async () => (await sample.must('sheet.editing', { item: 'pip-hoses' })).sheet?.steps.map((step) => step.text)).toEqual(['My own way.']);
  });

  test('a step that speaks of a hazard nobody marked is saved, asked about, and marked with one press', async () => {
    // Its form is still open.
    await row('What is done').first().getByLabel('What is done').fill('Jack the car up.');
    await button('Close this step: 1').click();
    await save();
    await row('Jack the car up.').getByText(/^This step speaks of “Jack”, and no step marks “Lifting”/).waitFor();
    await sample.axeAtEverySize('a step that is asked about');
    await button('Mark it: Lifting').click();
    await expect.poll(named).toBe('Change step 1');
    await expect.poll(() => page.getByText(/^This step speaks of/).count()).toBe(0);
    await save();
    await said('The sheet of “Rubber brake hoses” is saved.');
    await expect.poll(async () => (await sample.must('sheet.editing', { item: 'pip-hoses' })).sheet?.steps.map((step) => step.hazards)).toEqual([['lifting']]);
  });

  test('the line that says what was done covers none of the buttons at the foot', async () => {
    const remove = button('Remove the whole sheet');
    const [foot, note] = [await remove.boundingBox(), await page.getByRole('status').filter({ hasText: 'is saved.' }).first().boundingBox()];
    expect((foot?.y ?? 0) + (foot?.height ?? 0)).toBeLessThanOrEqual(note?.y ?? 0);
    for (const at of [0.05, 0.5, 0.95]) {
      expect(await remove.evaluate((element, share) => {
        const { left, top, width, height } = element.getBoundingClientRect();
        return element.contains(document.elementFromPoint(left + width * share, top + height * 0.9));
      }, at)).toBe(true);
    }
  });

  test('stands under its own car; one that is not there leads back to the car by its name', async () => {
    const wipers = await sample.must('sheet.editing', { item: 'ember-wipers' });
    await go('/car/pip/sheet/ember-wipers', `Task sheet: ${wipers.itemName}, Ember`);
    await expect.poll(() => new URL(page.url()).pathname).toBe('/car/ember/sheet/ember-wipers');
    await go('/car/ember/sheet/nope', 'Task sheet');
    await page.getByRole('alert').getByRole('link', { name: 'All of Ember', exact: true }).waitFor();
    expect(await page.getByRole('link', { name: 'All of ember', exact: true }).count()).toBe(0);
  });

  test('is reached from the job sheet', async () => {
    const kept = await sample.must('session.keep', { sessions: [{ day: '2026-11-28' as never, place: 'home', tasks: [{ kind: 'item', id: item }] }] });
    await go(`/sessions/${must(kept.sessions[0], 'the session that was kept').id}/sheet`, 'Job sheet: Sat 28 Nov, the drive');
    await page.getByRole('link', { name: 'Change the sheet: brake fluid' }).click();
    await page.getByRole('heading', { name: 'Task sheet: brake fluid, Pip', level: 1 }).waitFor();
    expect(sample.complaints).toEqual([]);
  });
});
