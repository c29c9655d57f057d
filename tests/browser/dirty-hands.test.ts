import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

/** A session worked in a small window; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('a session worked in a small window', { timeout: 120_000 }, () => {
  let sample: SamplePage;
  let session = '';
  const keep = async (...ids: string[]) => {
    const { today } = await sample.must('sessions.show', {});
    const kept = await sample.must('session.keep', { sessions: [{ day: today, place: 'home', tasks: ids.map((id) => ({ kind: 'item' as const, id: `tern-${id}` })) }] });
    return kept.sessions.find((one) => one.tasks.some((task) => task.id === `tern-${ids[0] ?? ''}`))?.id ?? '';
  };
  beforeAll(async () => {
    sample = await openSamplePage();
    await sample.must('car.add', { id: 'tern', name: 'Tern', power: 'petrol', year: 2015 });
    for (const id of ['stoppers', 'polish', 'oil']) await sample.must('item.add', { id: `tern-${id}`, car: 'tern', name: `The ${id}`, interval: { repeat: { months: 12, distance: null } } });
    await sample.must('sheet.set', { item: 'tern-stoppers', steps: [
      { text: 'Raise the car and take the front wheels off, one after the other, and lay each below the sill.', hazards: ['lifting', 'brakes', 'springs', 'heavy'], tools: ['jack', 'two stands'] },
      { text: 'Hold the new parts beside the old.' },
    ] });
    await sample.must('sheet.set', { item: 'tern-oil', steps: [{ text: 'Let it out.', turn: 'work', hazards: ['hot', 'heavy'] }] });
    session = await keep('stoppers');
    await sample.must('work.begin', { session });
    await sample.page.setViewportSize({ width: 640, height: 400 });
    await sample.page.evaluate((to) => history.pushState(null, '', to), `/sessions/${session}/work`);
  });
  afterAll(() => sample.close());

  const shown = () => sample.must('work.show', { session });
  const ticked = async () => (await shown()).steps.filter((one) => one.tick !== null).length;
  const at = (text: string) => sample.page.locator('section[data-ticked]').getByRole('heading', { name: text }).waitFor();
  const press = (key: string) => sample.page.keyboard.press(key);
  const box = async (name: string) => (await sample.page.getByRole('heading', { name }).boundingBox()) ?? { y: Number.NaN, height: 0 };

  test('space reads on to the end of a step that is taller than the window, and only then ticks it', async () => {
    await at('Raise the car');
    const card = await sample.page.locator('section[data-ticked]').boundingBox();
    expect(Math.abs(card?.y ?? Number.NaN)).toBeLessThan(20);
    let seen = false;
    for (let presses = 0; (await ticked()) === 0; presses += 1) {
      expect(presses).toBeLessThan(8);
      const { y, height } = await box('Raise the car');
      if (y >= 0 && y + height <= 400) seen = true;
      await press('Space');
      if (presses === 0) expect(await ticked()).toBe(0);
      if (seen) await sample.page.waitForTimeout(300);
    }
    expect(seen).toBe(true);
  });

  test('the next step comes with its card at the top', async () => {
    await at('Hold the new parts');
    const { y, height } = await box('Hold the new parts');
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y + height).toBeLessThanOrEqual(400);
    await sample.page.evaluate(() => window.scrollTo(0, document.querySelector('section[data-ticked]')?.getBoundingClientRect().bottom ?? 0));
    await press('ArrowLeft');
    await at('Raise the car');
    const top = async () => (await sample.page.locator('section[data-ticked]').boundingBox())?.y ?? Number.NaN;
    await expect.poll(async () => Math.abs(await top())).toBeLessThan(20);
    await press('ArrowRight');
  });

  test('something found is written with Enter, and left with Escape', async () => {
    const panel = sample.page.getByRole('form', { name: 'Found something' });
    await sample.page.getByRole('button', { name: 'Found something' }).press('Enter');
    await panel.waitFor();
    await press('Escape');
    await panel.waitFor({ state: 'detached' });
    expect((await shown()).found).toEqual([]);
    await sample.page.getByRole('button', { name: 'Found something' }).press('Enter');
    await panel.getByLabel('What it is').fill('a cracked hose');
    await press('Tab');
    expect(await sample.page.evaluate(() => document.activeElement?.textContent)).toMatch(/^Watch it/);
    await panel.getByLabel('What it is').press('Enter');
    await panel.waitFor({ state: 'detached' });
    expect((await shown()).found).toMatchObject([{ text: 'a cracked hose', severity: 'watch' }]);
    await sample.axeAtEverySize('a step in a small window');
    await sample.page.setViewportSize({ width: 640, height: 400 });
  });

  test('back from the end there is a way on, and a way to the record', async () => {
    await at('Hold the new parts');
    await sample.page.locator('section[data-ticked]').focus();
    while ((await ticked()) < 2) {
      await press('Space');
      await sample.page.waitForTimeout(300);
    }
    const end = sample.page.getByRole('heading', { name: 'All 2 are ticked' });
    await end.waitFor();
    await press('ArrowLeft');
    await at('Hold the new parts');
    await sample.page.getByRole('button', { name: 'Write the record' }).waitFor();
    await sample.page.getByRole('button', { name: 'On to the next' }).click();
    await end.waitFor();
    await press('ArrowLeft');
    await at('Hold the new parts');
    await press('ArrowRight');
    await end.waitFor();
  });

  test('what came to the session since is read first, and that alone', async () => {
    await keep('oil');
    const anew = sample.page.getByRole('region', { name: 'New since you began' });
    await anew.waitFor();
    expect(await anew.getByRole('listitem').allTextContents()).toEqual([expect.stringMatching(/^Hot: /)]);
    await sample.axeAtEverySize('cautions that came since');
    await sample.page.getByRole('button', { name: 'I have read them: go on' }).press('Enter');
    await at('Let it out.');
    expect(await ticked()).toBe(2);
  });

  test('a session that was dropped says that it wrote no record', async () => {
    await sample.must('session.end', { session, as: 'cancelled', sure: true });
    await sample.page.getByText('This session was dropped: it wrote no record.').waitFor();
    expect(sample.complaints).toEqual([]);
  });
});
