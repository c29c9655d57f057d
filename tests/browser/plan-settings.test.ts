import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

/** What a plan goes by, and the list of sessions, in the sample; each test goes on where the one before it stopped. */
describe.skipIf(chromiumHere === null)('what a plan goes by, and the screen of sessions', { timeout: 180_000 }, () => {
  let served: SamplePage;
  let page: Page;

  beforeAll(async () => {
    served = await openSamplePage();
    page = served.page;
  });
  afterAll(() => served.close());

  const region = (name: string) => page.getByRole('region', { name, exact: true });
  const button = (name: string | RegExp) => page.getByRole('button', { name });
  const said = (text: string | RegExp) => page.getByRole('status').filter({ hasText: text }).first().waitFor();
  const undo = async () => {
    await button('Undo').click();
    await said('Undone.');
  };

  test('is reached from Settings, and has no fault at any size', async () => {
    await page.getByRole('navigation').getByRole('link', { name: 'Settings' }).click();
    await page.getByRole('link', { name: 'What a plan goes by' }).click();
    await page.getByRole('heading', { name: 'What a plan goes by', level: 1 }).waitFor();
    await region('Places').getByText('home · opening £12.00').waitFor();
    await served.axeAtEverySize('what a plan goes by');
  });

  test('how one plans is saved; what is no such number is refused at its field', async () => {
    const form = region('How you plan');
    await form.getByLabel('Days to look ahead').fill('400');
    await form.getByRole('button', { name: 'Save how you plan' }).click();
    await form.getByRole('alert').filter({ hasText: 'A plan looks 1 to 366 whole days ahead.' }).waitFor();
    await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe('400');
    await form.getByLabel('Days to look ahead').fill('28');
    await form.getByLabel('Safety').fill('3.50');
    await form.getByLabel('Fri').check();
    await form.getByRole('button', { name: 'Save how you plan' }).click();
    await said('How you plan is saved.');
    expect((await served.must('planning.show', {})).settings).toMatchObject({ horizonDays: 28, workWeekdays: [5, 6, 7], lateMinorADay: { safety: 350, damage: 60 } });
  });

  test('a garage is added, changed, closed for days, and removed', async () => {
    await button('Add a garage').click();
    await button('Save the place').click();
    await page.getByRole('dialog').getByRole('alert').filter({ hasText: 'This is empty.' }).waitFor();
    await page.getByLabel('Name').fill('Quay Works');
    await page.getByLabel('What beginning there costs each time').fill('18.50');
    await served.axeAtEverySize('the form of a place');
    await button('Save the place').click();
    await region('Places').getByText(/^garage · opening £18\.50/).waitFor();
    await button('Close or open days at Quay Works').click();
    await page.getByRole('textbox', { name: 'First day', exact: true }).fill('24/12/2026');
    await page.getByRole('textbox', { name: 'Last day', exact: true }).fill('20/12/2026');
    await page.getByLabel('Why').fill('turn of the year');
    await button('Save the days').click();
    await page.getByRole('dialog').getByRole('alert').filter({ hasText: 'The days end on 20 Dec 2026, before they begin' }).waitFor();
    await page.getByRole('textbox', { name: 'Last day', exact: true }).fill('31/12/2026');
    await button('Save the days').click();
    await region('Places').getByText('closed 24 Dec 2026 to 31 Dec 2026: turn of the year').waitFor();
    await button('Change: closed 24 Dec 2026 to 31 Dec 2026: turn of the year').click();
    await expect.poll(() => page.getByRole('textbox', { name: 'First day', exact: true }).inputValue()).toBe('24 Dec 2026');
    await page.getByRole('textbox', { name: 'Last day', exact: true }).fill('2/1/2027');
    await button('Save the days').click();
    await region('Places').getByText('closed 24 Dec 2026 to 2 Jan 2027: turn of the year').waitFor();
    await expect.poll(() => region('Places').getByText('31 Dec 2026: turn of the year').count()).toBe(0);
    await button('Remove Quay Works').click();
    await said(/Quay Works is removed\.|is named/);
  });

  test('days without a car, what is opened up and a pair are entered and taken back', async () => {
    await button('Add days on which Pip cannot be worked on').click();
    await page.getByRole('textbox', { name: 'First day', exact: true }).fill('5/12/2026');
    await page.getByRole('textbox', { name: 'Note' }).fill('a wedding');
    await button('Save the days').click();
    await region('Pip').getByText('needed 5 Dec 2026: a wedding').waitFor();
    await button('Change: Pip needed 5 Dec 2026: a wedding').click();
    await expect.poll(() => page.getByRole('textbox', { name: 'Last day', exact: true }).inputValue()).toBe('');
    await page.getByLabel('The car is then').selectOption({ label: 'away: not there to drive either' });
    await page.getByRole('textbox', { name: 'Last day', exact: true }).fill('6/12/2026');
    await button('Save the days').click();
    await region('Pip').getByText('away 5 Dec 2026 to 6 Dec 2026: a wedding').waitFor();
    await expect.poll(() => region('Pip').getByText('a wedding').count()).toBe(1);
    await undo();
    await region('Pip').getByText('needed 5 Dec 2026: a wedding').waitFor();
    await button('Remove: Pip needed 5 Dec 2026: a wedding').click();
    await region('Pip').getByText('a wedding').waitFor({ state: 'detached' });
    await button('Add what is opened up on Pip').click();
    await page.getByRole('textbox', { name: 'What is opened up' }).fill('seat out');
    await page.getByLabel('Minutes there and back').fill('quick');
    await button('Save it').click();
    await page.getByRole('dialog').getByRole('alert').filter({ hasText: 'Write a number' }).waitFor();
    await page.getByLabel('Minutes there and back').fill('25');
    await button('Save it').click();
    await region('Pip').getByText('seat out, 25 min').waitFor();
    await undo();
    await button('Add a pair of tasks of Pip').click();
    await button('Save the pair').click();
    await page.getByRole('dialog').getByRole('alert').filter({ hasText: 'Choose a task.' }).waitFor();
    await page.getByLabel('While this is done').selectOption({ label: 'engine oil and filter' });
    await page.getByLabel('this is worth doing too').selectOption({ label: 'engine oil and filter' });
    await button('Save the pair').click();
    await page.getByRole('dialog').getByRole('alert').filter({ hasText: 'Name two different tasks.' }).waitFor();
    await page.getByLabel('this is worth doing too').selectOption({ label: 'cabin filter' });
    await button('Save the pair').click();
    await region('Pip').getByText('cabin filter, while engine oil and filter is done').waitFor();
    await undo();
  });

  test('the sessions are listed in time with their tasks and reasons; one is moved by its fields', async () => {
    await page.getByRole('navigation').getByRole('link', { name: 'Sessions' }).click();
    await page.getByRole('heading', { name: 'Sessions', level: 1 }).waitFor();
    await button('Propose sessions').click();
    await button(/^Keep all/).waitFor({ timeout: 60_000 });
    const days = async () => (await served.must('sessions.show', {})).sessions.map((one) => one.day);
    expect(await days()).toEqual([...(await days())].sort());
    await expect.poll(async () => (await page.getByRole('list', { name: 'Tasks' }).count()) === (await days()).length).toBe(true);
    await served.axeAtEverySize('the screen of sessions');
    await button(/^Move it: /).first().click();
    const panel = page.getByRole('region', { name: 'Moving' });
    await panel.getByRole('textbox', { name: 'Day', exact: true }).fill('12/12/2026');
    await panel.getByRole('status').getByText(/^Sat 12 Dec, the drive\. It costs/).waitFor();
    await button('Keep it there').click();
    await said('Moved to Sat 12 Dec, the drive, and kept there.');
    await page.getByRole('heading', { name: 'Sat 12 Dec, the drive' }).waitFor();
    await undo();
  });

  test('a task is taken out of a kept session without another day, and is free again', async () => {
    const kept = async () => (await served.must('sessions.show', {})).sessions.find((one) => one.state === 'kept' && one.tasks.length > 1);
    const [before, count] = [await kept(), (await kept())?.tasks.length ?? 0];
    const name = before?.tasks[0] === undefined ? '' : `${before.tasks[0].carName}: ${before.tasks[0].name}`;
    await button(`Take out of the session: ${name}`).click();
    await said(`${name} is taken out; it is free again.`);
    const standing = async () => (await served.must('sessions.show', {})).sessions.find((one) => one.id === before?.id);
    await expect.poll(async () => (await standing())?.tasks.length).toBe(count - 1);
    expect((await standing())?.state).toBe('kept');
    await undo();
    await expect.poll(async () => (await standing())?.tasks.length).toBe(count);
  });

  test('a task that is left is given a day', async () => {
    await button(/^Give it a day: /).first().click();
    const panel = page.getByRole('region', { name: 'Moving' });
    await panel.getByRole('status').getByText(/It costs|It cannot/).first().waitFor();
    await page.keyboard.press('Escape');
    await panel.waitFor({ state: 'detached' });
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Give it a day');
  });

  test('nothing complained', () => expect(served.complaints).toEqual([]));
});
