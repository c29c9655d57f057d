import { expect, test } from 'vitest';
import { openTestHost } from './open-test-host.ts';

test.each(['2026-11-25', '2026-05-31'])('on %s the sample shows an inbox: one clear suggestion, a date that can be read two ways, a dated photograph, one set aside, one with the whole car', async (on) => {
  const host = openTestHost({ on });
  await host.must('sample.open', {});
  const asked = (show: 'inbox' | 'tied' | 'aside') => host.must('papers.show', { show, car: null, kind: null, search: '', page: 1 });
  const named = async (show: 'inbox' | 'tied' | 'aside') => (await asked(show)).papers;
  const inbox = await named('inbox');
  expect(inbox.map((one) => one.name).sort()).toEqual(['photograph 0003.png', 'scan 0001.pdf', 'scan 0002.pdf']);
  const shown = async (name: string) => host.must('paper.show', { paper: inbox.find((one) => one.name === name)?.id ?? '' });
  const wipers = await shown('scan 0001.pdf');
  expect([wipers.suggestions[0]?.title, wipers.suggestions[0]?.carName, wipers.suggestions[0]?.clear]).toEqual(['New wiper blades', 'Pip', true]);
  const unsure = await shown('scan 0002.pdf');
  expect(unsure.suggestions.some((one) => one.clear)).toBe(false);
  const photograph = await shown('photograph 0003.png');
  expect([photograph.paper.dayFrom, photograph.taken?.time, photograph.taken?.offset]).toEqual(['camera', '10:42:07', '+01:00']);
  expect(photograph.suggestions[0]?.title).toBe('Tyres looked at');
  expect((await named('aside')).map((one) => one.name)).toEqual(['scan 0004.pdf']);
  const whole = (await host.must('papers.show', { show: 'tied', car: 'pip', kind: 'picture', search: 'photograph 0005', page: 1 })).papers;
  expect(whole.map((one) => one.uses.map((use) => [use.kind, use.id]))).toEqual([[['car', 'pip']]]);
}, 120_000);
