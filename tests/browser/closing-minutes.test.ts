import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ReplyOf } from '../../shared-core/contract/contract.ts';
import { ok, type Result } from '../../shared-core/result/result.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

describe.skipIf(chromiumHere === null)('the minutes of a session that is closed', () => {
  let sample: SamplePage;
  let session = '';
  beforeAll(async () => {
    sample = await openSamplePage();
    const { today } = await sample.must('sessions.show', {});
    await sample.must('car.add', { id: 'tern', name: 'Tern', power: 'petrol', year: 2015 });
    await sample.must('item.add', { id: 'tern-polish', car: 'tern', name: 'The polish', minutes: 45, interval: { repeat: { months: 12, distance: null } } });
    const kept = await sample.must('session.keep', { sessions: [{ day: today, place: 'home', tasks: [{ kind: 'item', id: 'tern-polish' }] }] });
    session = kept.sessions.find((one) => one.tasks.some((task) => task.id === 'tern-polish'))?.id ?? '';
    await sample.must('work.begin', { session });
    await sample.must('work.tick', { session, of: [{ task: 'item/tern-polish', step: 'whole' }] });
  });
  afterAll(() => sample.close());

  test('are asked about where they are far off what is usual, and taken as they are; what ran on is said', async () => {
    const { page } = sample;
    // The host goes by the hour of the machine, so that a night is told to the page by its answer alone.
    await sample.alter('work.closing', (raw) => {
      const reply = raw as Result<ReplyOf<'work.closing'>>;
      return reply.ok ? ok({ ...reply.value, ranOn: { name: 'The polish', after: `${reply.value.today}T20:40:00.000Z`, minutes: 1460 } }) : reply;
    });
    await page.evaluate((path) => {
      history.pushState(null, '', path);
      dispatchEvent(new PopStateEvent('popstate'));
    }, `/sessions/${session}/close`);
    await page.getByRole('note').filter({ hasText: /^The time of “The polish” was left running\. .* and 24 h 20 min are left out\./ }).waitFor();
    const minutes = page.getByLabel('Minutes it took: The polish');
    const asked = page.getByText('Is that right? It usually takes 45 min.');
    await minutes.fill('45');
    expect(await asked.count()).toBe(0);
    await minutes.fill('450');
    await asked.waitFor();
    await sample.axeAtEverySize('closing-minutes');
    await page.locator('form').getByRole('button', { name: 'Write the record' }).click();
    await page.getByRole('status').filter({ hasText: '1 record is written, and the session is closed.' }).first().waitFor();
    expect((await sample.must('car.show', { car: 'tern' })).records[0]?.record.lines).toMatchObject([{ item: 'tern-polish', minutes: 450 }]);
    expect(sample.complaints).toEqual([]);
  });
});
