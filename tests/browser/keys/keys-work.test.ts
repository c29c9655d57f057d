import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { KEYS, SCREEN_ADDRESSES } from '../../../renderer/ui/keys/keys.ts';
import { tell } from '../../../renderer/ui/words/tell.ts';
import { openSamplePage, type SamplePage } from '../sample-page.ts';

let sample: SamplePage;
beforeAll(async () => {
  sample = await openSamplePage();
});
afterAll(async () => {
  expect(sample.complaints).toEqual([]);
  await sample.close();
});

const at = () => new URL(sample.page.url()).pathname;
const press = (key: string) => sample.page.keyboard.press(key);
const dialogs = () => sample.page.getByRole('dialog').count();
const go = async (figure: number) => {
  await press(String(figure));
  const address = SCREEN_ADDRESSES[figure - 1] ?? '';
  await expect.poll(at).toMatch(address === '/car' ? /^\/car/ : new RegExp(`^${address}$`));
  await expect.poll(() => sample.page.evaluate(() => document.activeElement?.tagName)).toBe('H1');
};

describe('the keys of every screen', () => {
  test('a figure goes to its screen, with the focus on its heading, and its link says so', async () => {
    for (const figure of [8, 7, 6, 5, 4, 3, 2, 1]) await go(figure);
    const links = sample.page.getByRole('navigation', { name: 'Screens' }).getByRole('link');
    expect(await links.evaluateAll((all) => all.map((link) => [link.getAttribute('href'), link.getAttribute('aria-keyshortcuts')]))).toEqual(SCREEN_ADDRESSES.map((address, place) => [address, String(place + 1)]));
  });

  test('the sheet of keys opens by its key and by its button on each screen, tells every key, those of the screen first, and passes axe', async () => {
    for (const figure of [1, 2, 3, 4, 5, 6, 7, 8]) {
      await go(figure);
      await sample.page.getByRole('button', { name: 'Keys', exact: true }).click();
      await sample.page.getByRole('dialog', { name: 'Keys' }).waitFor();
      await press('Escape');
      await expect.poll(dialogs).toBe(0);
    }
    await go(1);
    await press('?');
    const sheet = sample.page.getByRole('dialog', { name: 'Keys' });
    await sheet.waitFor();
    const told = await sheet.locator('dd').allInnerTexts();
    expect([...told].sort()).toEqual(KEYS.map((one) => tell(one.does)).sort());
    expect(await sheet.locator('h3').allInnerTexts()).toEqual(expect.arrayContaining(['On every screen', 'While you work']));
    expect((await sheet.locator('h3').allInnerTexts()).slice(0, 3)).toEqual(['In the yard', 'While a session is moved', 'On every screen']);
    await sample.axeAtEverySize('the sheet of keys');
    await press('Escape');
    await expect.poll(dialogs).toBe(0);
  }, 120_000);

  test('in a field a character is itself, and a sheet over the screen keeps it', async () => {
    await go(5);
    await sample.page.getByRole('searchbox').or(sample.page.getByRole('textbox')).first().focus();
    for (const key of ['/', '?', '3']) await press(key);
    expect([at(), await dialogs()]).toEqual(['/papers', 0]);
    await sample.page.getByRole('heading', { level: 1 }).focus();
    await press('?');
    await sample.page.getByRole('dialog', { name: 'Keys' }).waitFor();
    await press('3');
    expect(at()).toBe('/papers');
    await press('Escape');
    await expect.poll(dialogs).toBe(0);
  });

  test('turned off they do nothing, here and after the page was opened anew; the buttons stay', async () => {
    await go(8);
    await sample.page.getByRole('switch', { name: 'Keys of one character' }).press('Space');
    await sample.page.getByRole('heading', { level: 1 }).focus();
    for (const key of ['/', '?', '1']) await press(key);
    expect([at(), await dialogs()]).toEqual(['/settings', 0]);
    await sample.page.reload();
    await sample.page.getByRole('heading', { name: 'Settings', level: 1 }).waitFor();
    await press('1');
    await press('/');
    expect([at(), await dialogs()]).toEqual(['/settings', 0]);
    await sample.page.getByRole('link', { name: 'Yard', exact: true }).click();
    await sample.page.getByRole('heading', { name: 'The yard' }).waitFor();
    expect(await sample.page.getByRole('link', { name: 'Yard', exact: true }).getAttribute('aria-keyshortcuts')).toBeNull();
    await press('r');
    expect(await sample.page.locator('main').getByRole('textbox').count()).toBe(0);
    await sample.page.getByRole('button', { name: 'Keys', exact: true }).click();
    const sheet = sample.page.getByRole('dialog', { name: 'Keys' });
    await sheet.getByText('Search the household. (off)').waitFor();
    await sheet.getByRole('switch', { name: 'Keys of one character' }).press('Space');
    await press('Escape');
    await expect.poll(dialogs).toBe(0);
    await press('8');
    await expect.poll(at).toBe('/settings');
  });
});

describe('the keys of the yard', () => {
  test('R and a letter enter a reading, Escape leaves it; plus, minus, T and Shift with an arrow move the calendar', async () => {
    await go(1);
    await sample.page.locator('[data-lane]').first().waitFor();
    await press('r');
    await press('a');
    await expect.poll(() => sample.page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT');
    await press('Escape');
    const axis = () => sample.page.evaluate(() => document.querySelector('section[aria-label="Lanes"]')?.textContent ?? '');
    await sample.page.getByRole('heading', { name: 'The yard' }).focus();
    const before = await axis();
    await press('-');
    await expect.poll(axis).not.toBe(before);
    await press('+');
    await expect.poll(axis).toBe(before);
    await press('Shift+ArrowRight');
    await expect.poll(axis).not.toBe(before);
    await press('t');
    await expect.poll(axis).toBe(before);
  });
});
