import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { SearchHit } from '../../shared-core/views/search-view.ts';
import { axeFaults } from './axe-faults.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';

let sample: SamplePage;
beforeAll(async () => {
  sample = await openSamplePage();
});
afterAll(async () => {
  expect(sample.complaints).toEqual([]);
  await sample.close();
});

const dialog = () => sample.page.getByRole('dialog', { name: 'Search the household' });
const field = () => dialog().getByLabel('What are you looking for?');
const status = () => dialog().getByRole('status').filter({ hasNotText: 'Asking' });
const focused = () => sample.page.evaluate(() => ({ id: document.activeElement?.id ?? '', text: document.activeElement?.textContent ?? '', found: document.activeElement?.hasAttribute('data-found') ?? false, on: document.activeElement?.tagName ?? '' }));
const yard = async () => {
  await sample.page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name: 'Yard', exact: true }).click();
  await sample.page.getByRole('heading', { name: 'The yard' }).waitFor();
};

describe('the search, by the keyboard', () => {
  test('a stroke opens it, what is found is counted aloud, arrows go through it, Enter leads to the thing', async () => {
    await sample.page.getByRole('heading', { name: 'The yard' }).focus();
    await sample.page.keyboard.press('/');
    await expect.poll(async () => (await focused()).on).toBe('INPUT');
    await dialog().getByText('Several words must all be in it.').waitFor();
    await sample.page.keyboard.type('brake fluid');
    await expect.poll(() => status().innerText()).toMatch(/^\d+ things found\.$/);
    expect(await dialog().locator('mark').first().innerText()).toBe('brake');
    expect(await dialog().locator('mark').first().evaluate((mark) => [getComputedStyle(mark).fontWeight, getComputedStyle(mark).textDecorationLine])).toEqual(['700', 'underline']);
    await sample.page.keyboard.press('ArrowDown');
    await sample.page.keyboard.press('ArrowDown');
    expect((await focused()).found).toBe(true);
    await sample.page.keyboard.press('ArrowUp');
    await sample.page.keyboard.press('ArrowUp');
    expect((await focused()).on).toBe('INPUT');
    await sample.page.keyboard.press('Enter');
    await expect.poll(async () => (await focused()).id).toMatch(/^item-/);
    expect((await focused()).text).toMatch(/brake fluid/);
    expect(await dialog().count()).toBe(0);
    // The same once more, from where one is: the focus comes back to it.
    await sample.page.keyboard.press('/');
    await sample.page.keyboard.type('brake fluid');
    await dialog().locator('a').first().waitFor();
    await sample.page.keyboard.press('Enter');
    await expect.poll(async () => (await focused()).id).toMatch(/^item-/);
  });

  test('Escape leaves it and gives the focus back; what is typed as a stroke in a field stays a stroke', async () => {
    await yard();
    const handover = sample.page.getByRole('link', { name: 'Handover', exact: true });
    await handover.focus();
    await sample.page.keyboard.press('/');
    await field().waitFor();
    await sample.page.keyboard.type('a/b');
    expect(await field().inputValue()).toBe('a/b');
    await sample.page.keyboard.press('Escape');
    await expect.poll(async () => (await focused()).text).toContain('Handover');
    expect(await dialog().count()).toBe(0);
  });
});

describe('the search, by the mouse', () => {
  test('a button opens it on every screen; nothing found says what to do, a slip what is near', async () => {
    await yard();
    await sample.page.getByRole('button', { name: 'Search' }).click();
    await field().fill('oil zzzz');
    await dialog().getByText('Leave a word out').waitFor();
    await expect.poll(() => status().innerText()).toBe('Nothing has “zzzz”.');
    await field().fill('brkae fluid');
    await expect.poll(() => status().innerText()).toMatch(/things found\. Nothing is called brkae\. Near it: brake/);
    await field().fill('oil');
    const more = dialog().getByRole('button', { name: /^Show all \d+: Work records$/ });
    const records = dialog().getByRole('region', { name: /^Work records/ });
    await expect.poll(() => records.getByRole('link').count()).toBe(5);
    await more.click();
    await expect.poll(() => records.getByRole('link').count()).toBeGreaterThan(5);
    await records.getByRole('link').first().click();
    await expect.poll(() => sample.page.url()).toMatch(/\/record\//);
    await expect.poll(async () => (await focused()).on).toBe('H1');
  });

  test('it passes axe with nothing typed, with much found and with nothing found, at every size', async () => {
    await yard();
    await sample.page.getByRole('button', { name: 'Search' }).click();
    await field().waitFor();
    expect(await axeFaults(sample.page)).toEqual([]);
    await field().fill('oil');
    await dialog().locator('mark').first().waitFor();
    await sample.axeAtEverySize('the search, with much found');
    await field().fill('zzzz');
    await dialog().getByText('Leave a word out').waitFor();
    expect(await axeFaults(sample.page)).toEqual([]);
    await sample.page.keyboard.press('Escape');
  }, 120_000);
});

describe('every address that the search gives', () => {
  test('leads to its thing: the place has the focus, or the screen that shows it its heading', async () => {
    const all = new Map<string, SearchHit>();
    for (const query of ['2026', 'e', 'a', 'o', 'oil', '2025', '2024', '2023']) {
      const view = await sample.must('household.search', { query, most: 100 });
      for (const hit of view.groups.flatMap((group) => group.hits)) all.set(hit.href, hit);
    }
    const kinds = new Set([...all.values()].map((hit) => hit.kind));
    expect([...kinds].sort()).toEqual(['car', 'figure', 'follow-up', 'item', 'lot', 'observation', 'obligation', 'offer', 'order', 'paper', 'part', 'quote', 'recall', 'record', 'session', 'specification', 'supplier', 'tool', 'wish'].sort());
    const lost: string[] = [];
    // All of what stands on lists, folded or not; of what has a screen of its own a few.
    const few = new Map<string, number>();
    for (const [href, { kind, name }] of all) {
      if (!href.includes('#')) {
        few.set(kind, (few.get(kind) ?? 0) + 1);
        if ((few.get(kind) ?? 0) > 3) continue;
      }
      await sample.page.evaluate((address) => {
        (document.activeElement as HTMLElement | null)?.blur();
        history.pushState(null, '', address);
      }, href);
      const place = href.split('#')[1];
      const there = place === undefined
        ? sample.page.waitForFunction((text) => document.querySelector('h1')?.textContent !== 'Nothing here' && document.querySelector('main')?.textContent.includes(text) === true, name, { timeout: 8000 })
        : sample.page.waitForFunction((id) => document.activeElement?.id === id, place, { timeout: 8000 });
      await there.catch(() => lost.push(`${kind} ${name}: ${href}`));
    }
    expect(lost).toEqual([]);
  }, 300_000);
});
