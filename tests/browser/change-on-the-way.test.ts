import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumHere } from './launch-chromium.ts';
import { openSamplePage, type SamplePage } from './sample-page.ts';
import { SHELL } from './shells/open-shell.ts';

/** A change that falls between a question of the page and its answer, or before the page hears what changes. */
describe.skipIf(chromiumHere === null)('a change while the page is asking', { timeout: 90_000 }, () => {
  let sample: SamplePage;
  beforeAll(async () => void (sample = await openSamplePage()));
  afterAll(() => sample.close());

  const keep = (id: string, day: string) =>
    sample.must('session.keep', { sessions: [{ id, day: day as never, place: 'corner', tasks: [{ kind: 'item', id: id === 'first' ? 'pip-oil' : 'pip-brake-fluid' }] }] });
  const shown = (day: RegExp) => sample.page.getByRole('list', { name: 'Sessions' }).getByRole('button', { name: day }).waitFor();

  test('the answer from before a session was kept does not stay on the yard', async () => {
    const { page } = sample;
    let asked = 0;
    // What the page asked as it came is answered: the next question is the one of the page that is loaded anew.
    await shown(/Sat 5 Dec/);
    const endAltering = await sample.alter('sessions.show', async (reply) => {
      asked += 1;
      if (asked === 1) await keep('first', '2026-12-17');
      return reply;
    });
    await page.reload();
    await shown(/Thu 17 Dec/);
    await endAltering();
    expect(asked).toBeGreaterThan(1);
  });

  test('a session is kept on the yard before the answer says so: the focus is at its post all the same', async () => {
    const { page } = sample;
    await page.getByRole('button', { name: 'Propose sessions' }).click();
    await page.getByRole('button', { name: /^Keep all/ }).waitFor({ timeout: 60_000 });
    const posts = page.getByRole('list', { name: 'Sessions' });
    const endAltering = await sample.alter('session.keep', async (reply) => {
      await posts.getByRole('button', { name: /^Sat 28 Nov.*kept$/ }).waitFor();
      return reply;
    });
    await posts.getByRole('button', { name: /^Sat 28 Nov.*proposed$/ }).press('Enter');
    await page.getByRole('button', { name: /^Keep it: / }).press('Enter');
    await page.getByRole('status').filter({ hasText: /is kept\./ }).waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toMatch(/^Sat 28 Nov.*kept$/);
    await endAltering();
  });

  // In a window the page hears from its first line on; there is nothing to wait for.
  test.skipIf(SHELL !== 'loopback')('nothing is asked before what changes can be heard', async () => {
    const { page } = sample;
    const order: string[] = [];
    page.on('request', (request) => order.push(new URL(request.url()).pathname));
    await page.route('**/pushes', async (route) => {
      await new Promise((wait) => setTimeout(wait, 500));
      await route.continue();
      order.push('heard');
    });
    await page.reload();
    await page.getByRole('heading', { name: 'The yard' }).waitFor();
    await keep('second', '2026-12-18');
    await shown(/Fri 18 Dec/);
    expect(order.indexOf('heard')).toBeGreaterThan(-1);
    expect(order.findIndex((path) => path.startsWith('/operations/'))).toBeGreaterThan(order.indexOf('heard'));
  });
});
