import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

describe.skipIf(chromiumHere === null)('work in hand', () => {
  let sample: SamplePage;
  let session = '';
  beforeAll(async () => {
    sample = await openSamplePage();
    const { today } = await sample.must('sessions.show', {});
    await sample.must('car.add', { id: 'tern', name: 'Tern', power: 'petrol', year: 2015 });
    for (const id of ['wipers', 'polish']) await sample.must('item.add', { id: `tern-${id}`, car: 'tern', name: `The ${id}`, interval: { repeat: { months: 12, distance: null } } });
    const kept = await sample.must('session.keep', { sessions: [{ day: today, place: 'home', tasks: ['wipers', 'polish'].map((id) => ({ kind: 'item' as const, id: `tern-${id}` })) }] });
    session = kept.sessions[0]?.id ?? '';
    await sample.must('work.begin', { session });
    await sample.must('work.tick', { session, of: [{ task: 'item/tern-wipers', step: 'whole' }] });
  });
  afterAll(() => sample.close());

  const standing = async () => (await sample.must('sessions.show', {})).sessions.find((one) => one.id === session);
  const focused = (label: RegExp) => expect.poll(() => sample.page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')).toMatch(label);

  test('is asked about before its session is dropped, and left as it is by Escape', async () => {
    const { page } = sample;
    await page.getByRole('navigation').getByRole('link', { name: 'Sessions' }).click();
    await page.getByRole('heading', { name: 'Sessions', level: 1 }).waitFor();
    await page.getByText('Work on it has begun: 1 of 2 ticked.').waitFor();
    await page.getByRole('button', { name: /^Drop it: .*25 Nov/ }).press('Enter');
    const asked = page.getByRole('group', { name: /^Work on this session has begun: 1 ticked\./ });
    await asked.waitFor();
    await focused(/^Work on this session/);
    await sample.axeAtEverySize('work-in-hand-drop');
    await page.keyboard.press('Escape');
    await asked.waitFor({ state: 'detached' });
    expect((await standing())?.state).toBe('kept');
  });

  test('is asked about before its task is taken out, and goes out when one is sure', async () => {
    const { page } = sample;
    const out = page.getByRole('button', { name: /^Take out of the session: .*The wipers/ });
    await out.press('Enter');
    await page.getByRole('group', { name: /^Work on this task has begun: 1 ticked\./ }).waitFor();
    await page.getByRole('button', { name: 'Leave it as it is' }).press('Enter');
    await out.press('Enter');
    await page.getByRole('button', { name: 'Take it out all the same' }).press('Enter');
    await expect.poll(async () => (await standing())?.tasks.length).toBe(1);
    await page.getByRole('button', { name: 'Undo' }).press('Enter');
    await expect.poll(async () => (await standing())?.tasks.length).toBe(2);
  });

  test('is given up with its session when one is sure, and comes back with one undo', async () => {
    const { page } = sample;
    await page.getByRole('button', { name: /^Drop it: .*25 Nov/ }).press('Enter');
    await page.getByRole('link', { name: 'Write the record' }).waitFor();
    await page.getByRole('button', { name: 'End it without a record' }).press('Enter');
    await expect.poll(standing).toBe(undefined);
    await page.getByRole('button', { name: 'Undo' }).press('Enter');
    await expect.poll(async () => (await standing())?.state).toBe('kept');
    expect((await sample.must('work.show', { session })).steps.filter((one) => one.tick !== null)).toHaveLength(1);
    expect(sample.complaints).toEqual([]);
  });
});
