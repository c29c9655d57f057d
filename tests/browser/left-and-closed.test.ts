import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { png } from '../papers/small-files.ts';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

describe.skipIf(chromiumHere === null)('a session with a car on which nothing was done', () => {
  let sample: SamplePage;
  let session = '';
  beforeAll(async () => {
    sample = await openSamplePage();
    const { today } = await sample.must('sessions.show', {});
    const interval = { repeat: { months: 12, distance: null } };
    for (const [id, name] of [['tern', 'Tern'], ['knot', 'Knot']] as const) {
      await sample.must('car.add', { id, name, power: 'petrol', year: 2015 });
      await sample.must('item.add', { id: `${id}-wipers`, car: id, name: 'The wipers', interval });
    }
    await sample.must('item.add', { id: 'tern-polish', car: 'tern', name: 'The polish', interval });
    const kept = await sample.must('session.keep', { sessions: [{ day: today, place: 'home', tasks: ['tern-wipers', 'tern-polish', 'knot-wipers'].map((id) => ({ kind: 'item' as const, id })) }] });
    session = kept.sessions[0]?.id ?? '';
    await sample.must('work.begin', { session });
    await sample.must('work.tick', { session, of: [{ task: 'item/tern-wipers', step: 'whole' }] });
    const { paper } = await sample.must('paper.keep', { name: 'blade.png', base64: Buffer.from(png(40, 30)).toString('base64') });
    await sample.must('work.photo', { session, car: 'knot', paper: paper.id });
  });
  afterAll(() => sample.close());

  test('is asked about before one of its cars leaves', async () => {
    const { page } = sample;
    await page.getByRole('navigation').getByRole('link', { name: 'Handover' }).click();
    await page.getByRole('link', { name: 'A car leaves', exact: true }).click();
    await page.getByRole('combobox', { name: 'Which car leaves' }).selectOption('tern');
    await page.getByRole('button', { name: 'It has left' }).press('Enter');
    await page.getByRole('checkbox', { name: 'It leaves all the same' }).waitFor();
    await sample.axeAtEverySize('leave-with-work');
    expect((await sample.must('sessions.show', {})).sessions.find((one) => one.id === session)?.cars).toEqual(['knot', 'tern']);
  });

  test('asks what becomes of its photographs, and keeps them among the papers of the car', async () => {
    const { page } = sample;
    await page.goto(new URL(`/sessions/${session}/close`, page.url()).href);
    await page.getByRole('combobox', { name: 'Nothing was done on Knot, so no record takes its photograph (1)' }).waitFor();
    await sample.axeAtEverySize('closing-bare-photos');
    await page.getByRole('button', { name: 'Write the record' }).press('Enter');
    await page.getByText('1 record is written, and the session is closed.').waitFor();
    const { papers } = await sample.must('papers.show', { show: 'all' });
    expect(papers.filter((one) => one.name === 'blade.png').map((one) => one.uses.map((use) => use.kind))).toEqual([['car']]);
    await page.goto(new URL(`/sessions/${session}/work`, page.url()).href);
    await page.getByText('This session is ended.').waitFor();
    expect(sample.complaints).toEqual([]);
  });
});
