import { describe, expect, test } from 'vitest';
import { searchViewSchema, type SearchHit } from '../../shared-core/views/search-view.ts';
import { foldText } from '../../shared-core/views/search-fold.ts';
import { openTestHost, type TestHost } from './open-test-host.ts';

const hits = async (host: TestHost, query: string): Promise<readonly SearchHit[]> => searchViewSchema.parse(await host.must('household.search', { query, most: 100 })).groups.flatMap((group) => group.hits);

describe('searching the household', () => {
  test('what is written is found at once, what is undone no more', async () => {
    const host = openTestHost();
    expect(await host.call('household.search', { query: 'pip' })).toMatchObject({ ok: false, refusal: { code: 'household-not-started' } });
    await host.must('household.start', {});
    expect(await hits(host, 'zephyr')).toEqual([]);
    const { undo } = await host.must('car.add', { id: 'pip', name: 'Zephyr' });
    expect((await hits(host, 'zephyr')).map((one) => [one.kind, one.href])).toEqual([['car', '/car/pip']]);
    await host.must('entry.withdraw', { entries: [...undo] });
    expect(await hits(host, 'zephyr')).toEqual([]);
  });

  test('the sample: every thing that a word finds is found by its own whole name, and what a paper says once it has been read', async () => {
    const host = openTestHost();
    await host.must('sample.open', {});
    const all = (await Promise.all(['2026', 'oil', 'brake', 'a', 'e'].map((query) => hits(host, query)))).flat();
    expect(new Set(all.map((one) => one.kind)).size).toBeGreaterThan(15);
    const names = [...new Set(all.map((one) => one.name))];
    for (const name of names) {
      const [first] = await hits(host, name.slice(0, 200));
      expect(first === undefined ? '' : foldText(first.name), name).toBe(foldText(name));
    }
    const paper = all.find((one) => one.kind === 'paper' && /receipt/.test(one.name));
    await host.must('paper.show', { paper: paper?.id ?? '' });
    expect((await hits(host, 'SAMPLE proves nothing')).find((one) => one.id === paper?.id)?.where).toMatchObject({ code: 'search-field-read-from-it' });
  }, 240_000);
});
