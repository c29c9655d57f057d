import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

/** A plan on the yard of the sample; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('a plan on the yard', { timeout: 180_000 }, () => {
  let served: SamplePage;
  let page: Page;

  beforeAll(async () => {
    served = await openSamplePage();
    page = served.page;
    // Four weeks are proven in a second or two.
    await served.must('plan-settings.set', { horizonDays: 28 });
  });
  afterAll(() => served.close());

  const bar = () => page.getByRole('region', { name: 'What the sessions come to' });
  const posts = () => page.getByRole('list', { name: 'Sessions' }).getByRole('button');
  const post = (text: string | RegExp): Locator => posts().filter({ hasText: text });
  const panel = () => page.getByRole('region', { name: 'Moving' });
  const button = (name: string | RegExp) => page.getByRole('button', { name });
  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).first().waitFor();
  const focused = () => page.evaluate(() => document.activeElement?.textContent ?? '');
  const standing = async () => (await served.must('yard.show', {})).sessions.map(({ day, place, state }) => `${day} ${place} ${state}`);

  test('at first only the kept sessions stand, and nothing is said to be proven', async () => {
    await expect.poll(() => posts().count()).toBe(2);
    await bar().getByText('2 sessions stand.').waitFor();
    await bar().getByText('Whether anything costs less is not known').waitFor();
    await served.axeAtEverySize('the yard with kept sessions');
  });

  test('proposed by the keyboard: told while it looks, laid on the yard, proven, with its saving', async () => {
    await button('Propose sessions').focus();
    await page.keyboard.press('Enter');
    await said('Looking for what costs least');
    await button(/^Keep all \d+ proposed$/).waitFor();
    await bar().getByText(/^\d+ sessions stand, \d+ of them proposed\. It costs £[\d.,]+\. Each task by itself on its first open day would cost £[\d.,]+, so it saves £[\d.,]+\. No plan costs less: it is proven\.$/).waitFor();
    await expect.poll(() => page.getByRole('radio', { name: '3 months' }).isChecked()).toBe(true);
    await expect.poll(async () => (await posts().count()) === (await standing()).length).toBe(true);
    await expect.poll(() => post(/tasks? · proposed$/).count()).toBeGreaterThan(0);
    await served.axeAtEverySize('the yard with a plan');
  });

  test('no post stands on a mark or its words, and no label on another', async () => {
    for (const width of [1280, 1920, 640]) {
      await page.setViewportSize({ width, height: 900 });
      const faults = () => page.evaluate(() => {
        const touch = (a: DOMRect, b: DOMRect) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
        const boxes = (within: Element, selector: string) => [...within.querySelectorAll(selector)].map((one) => one.getBoundingClientRect());
        const inLanes = [...document.querySelectorAll('[data-lane]:not([data-lane=""])')].flatMap((lane) => boxes(lane, '[data-kept]').flatMap((one) => boxes(lane, '[data-mark]').filter((mark) => touch(one, mark))));
        const labels = boxes(document.body, '[data-spot]');
        const onEachOther = labels.flatMap((one, at) => labels.slice(at + 1).filter((other) => touch(one, other)));
        return inLanes.length + onEachOther.length;
      });
      await expect.poll(faults, { message: `at ${width}` }).toBe(0);
      // In the lanes of its cars every post is seen.
      const seen = () => page.evaluate(() => document.querySelectorAll('[data-lane]:not([data-lane=""]) [data-kept]').length);
      await expect.poll(seen).toBeGreaterThan(3);
    }
    await page.setViewportSize({ width: 1280, height: 800 });
  });

  test('opened by Enter: its tasks with minutes, cost and the reason, what is left and what it rests on', async () => {
    await post(/proposed$/).first().focus();
    await page.keyboard.press('Enter');
    const sheet = page.getByRole('dialog');
    await sheet.getByText(/ h( \d+ min)? of 4 h · opening £12\.00/).waitFor();
    const task = sheet.getByRole('list', { name: 'Tasks' }).getByRole('listitem').first();
    await task.getByText(/^£\d+\.\d\d$/).waitFor();
    await task.getByText(/^(It|Waiting|You|Nothing) .*\.$/).waitFor();
    await sheet.getByRole('heading', { name: 'Left for later' }).waitFor();
    await served.axeAtEverySize('an open session');
    await page.keyboard.press('Escape');
    await sheet.waitFor({ state: 'detached' });
    await expect.poll(focused).toMatch(/proposed$/);
  });

  test('moved by keys: M takes it up, cost and lateness are said at each step, Escape puts it back', async () => {
    const before = await standing();
    const label = await focused();
    await page.keyboard.press('m');
    await panel().getByText('It stands where it stood.').waitFor();
    await page.keyboard.press('PageDown');
    await panel().getByRole('status').getByText(/It costs £[\d.]+ more, and adds \d+ days of being late\./).waitFor();
    await expect.poll(focused).not.toBe(label);
    await page.keyboard.press('PageUp');
    await panel().getByText('It stands where it stood.').waitFor();
    await page.keyboard.press('PageDown');
    // From a Saturday by nine days to a Monday, which is no day of work at home.
    for (const key of ['ArrowRight', 'ArrowRight']) await page.keyboard.press(key);
    await panel().getByText(/You may keep it there all the same/).waitFor();
    await served.axeAtEverySize('a post that is being moved');
    await page.keyboard.press('Escape');
    await panel().waitFor({ state: 'detached' });
    await expect.poll(focused).toBe(label);
    expect(await standing()).toEqual(before);
  });

  test('kept where it was moved to by Enter, then undone', async () => {
    const before = await standing();
    // Two weeks on, to a Saturday without a session: a week on, no everyday car would be left to drive.
    for (const key of ['m', 'PageDown', 'PageDown']) await page.keyboard.press(key);
    await panel().getByText(/It costs/).waitFor();
    await page.keyboard.press('Enter');
    await said(/^Moved to .*, and kept there\./);
    await expect.poll(async () => (await standing()).filter((one) => one.endsWith('moved')).length).toBe(1);
    await bar().getByText(/The plan that was proposed costs £[\d.,]+, £[\d.]+ less\./).waitFor();
    await expect.poll(focused).toMatch(/kept, moved by you$/);
    await button('Undo').click();
    await expect.poll(standing).toEqual(before);
    await bar().getByText('No plan costs less: it is proven.').waitFor();
  });

  test('drawn by the pointer, it stays in hand until it is kept or put back; a drag opens nothing', async () => {
    const label = post(/proposed$/).first();
    await label.scrollIntoViewIfNeeded();
    const box = await label.boundingBox();
    if (box === null) throw new Error('a post without a box');
    await page.mouse.move(box.x + 20, box.y + 10);
    await page.mouse.down();
    await page.mouse.move(box.x + 40, box.y + 10, { steps: 4 });
    await page.mouse.move(box.x + 90, box.y + 10, { steps: 4 });
    await page.mouse.up();
    await panel().getByText(/It costs/).waitFor();
    expect(await page.getByRole('dialog').count()).toBe(0);
    const day = await panel().getByRole('textbox', { name: 'Day', exact: true }).inputValue();
    expect(day).toMatch(/^\d+ Dec 2026$/);
    await button('Put it back').click();
    await panel().waitFor({ state: 'detached' });
    await expect.poll(focused).toMatch(/proposed$/);
  });

  test('where it cannot stand it is refused with the reason, and stays in hand', async () => {
    const before = await standing();
    await served.must('place-days.set', { place: 'home', from: '2026-12-07' as never, reason: 'painters in the yard' });
    await post(/proposed$/).first().focus();
    await page.keyboard.press('m');
    await panel().getByRole('textbox', { name: 'Day', exact: true }).fill('7/12/2026');
    await panel().getByText('It cannot stand there.').waitFor();
    await button('Keep it there').click();
    await panel().getByRole('alert').filter({ hasText: 'Not moved. the drive is closed on 7 Dec 2026: painters in the yard. Choose another day, or take the closing back.' }).waitFor();
    expect(await standing()).toEqual(before);
    await expect.poll(() => panel().getByRole('textbox', { name: 'Day', exact: true }).inputValue()).toBe('7 Dec 2026');
    await served.axeAtEverySize('a move that is refused');
    await page.keyboard.press('Escape');
    await panel().waitFor({ state: 'detached' });
    // That Monday was never a day of the plan: what was proven of it still holds.
    await bar().getByText('No plan costs less: it is proven.').waitFor();
  });

  test('a single task goes into another session', async () => {
    await post(/proposed$/).first().click();
    const sheet = page.getByRole('dialog');
    const tasks = await sheet.getByRole('list', { name: 'Tasks' }).getByRole('listitem').count();
    await sheet.getByRole('button', { name: /^Move .* to another session or day$/ }).first().click();
    await panel().waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT');
    const into = panel().getByLabel('Into a session that stands');
    const target = (await into.locator('option').allTextContents()).find((text) => text.includes('the van workshop'));
    await into.selectOption({ label: target ?? '' });
    await panel().getByRole('status').getByText(/It (costs|cannot)/).first().waitFor();
    await into.selectOption({ index: 2 });
    await panel().getByRole('status').getByText(/It costs/).waitFor();
    await button('Keep it there').click();
    await said(/^Moved to /);
    await expect.poll(async () => (await served.must('yard.show', {})).sessions.filter((one) => one.state === 'proposed').some((one) => one.tasks.length === tasks - 1)).toBe(true);
    await button('Undo').click();
    await said('Undone.');
  });

  test('kept, dropped, and all kept; each is undone', async () => {
    const before = await standing();
    await post(/proposed$/).first().click();
    await button(/^Keep it: /).click();
    await said(/ is kept\./);
    await expect.poll(async () => (await standing()).filter((one) => one.endsWith('kept')).length).toBe(before.filter((one) => one.endsWith('kept')).length + 1);
    await expect.poll(focused).toMatch(/kept$/);
    await button('Undo').click();
    await expect.poll(standing).toEqual(before);
    await post(/proposed$/).first().click();
    await button(/^Drop it: /).click();
    await said(/ is dropped; its tasks are free again\./);
    await expect.poll(async () => (await standing()).length).toBe(before.length - 1);
    await button('Undo').click();
    await expect.poll(standing).toEqual(before);
    await expect.poll(() => posts().count()).toBe(before.length);
    await button(/^Keep all/).click();
    await expect.poll(async () => (await standing()).every((one) => one.endsWith('kept'))).toBe(true);
    await button('Undo').click();
    await expect.poll(standing).toEqual(before);
    await button(/^Keep all/).waitFor();
    await button('Clear the proposed').click();
    await expect.poll(() => posts().count()).toBe(2);
  });

  test('stopped, it lays the best it has on the yard', async () => {
    await served.must('plan-settings.set', { horizonDays: 300 });
    await button('Propose sessions').click();
    await button('Stop, and take the best so far').click();
    await button(/^Keep all/).waitFor({ timeout: 60_000 });
    await bar().getByText(/No plan costs less: it is proven\.|It is the best found; none costs less than £[\d.,]+\./).waitFor();
  });

  test('nothing complained', () => expect(served.complaints).toEqual([]));
});
