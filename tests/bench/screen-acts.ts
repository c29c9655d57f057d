import type { Page } from 'playwright-core';

const press = (key: string, times = 1) => async (page: Page): Promise<void> => {
  for (let n = 0; n < times; n += 1) await page.keyboard.press(key);
};
const screen = (name: string) => async (page: Page): Promise<void> => {
  await page.getByRole('navigation', { name: 'Screens' }).getByRole('link', { name, exact: true }).click();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.waitForLoadState('networkidle').catch(() => undefined);
};
const link = (name: string) => async (page: Page): Promise<void> => {
  await page.getByRole('main').getByRole('link', { name, exact: true }).first().click();
  await page.waitForTimeout(600);
};

/** What a person does in a round through the screens of a large household, by name. */
export const ACTS: readonly (readonly [string, (page: Page) => Promise<void>])[] = [
  ['the yard comes', async () => undefined],
  ['yard: nearer to a month, by keys', press('-', 6)],
  ['yard: wider to three years, by keys', press('+', 9)],
  ['yard: ahead and back to today', async (page) => { await press('Shift+ArrowRight', 3)(page); await press('t')(page); }],
  ['yard: the wheel over the months', async (page) => {
    const box = await page.getByTitle('The wheel goes nearer').boundingBox();
    await page.mouse.move((box?.x ?? 0) + 300, (box?.y ?? 0) + 20);
    for (let n = 0; n < 6; n += 1) await page.mouse.wheel(0, -120);
    for (let n = 0; n < 6; n += 1) await page.mouse.wheel(0, 120);
  }],
  ['yard: over the marks with the pointer', async (page) => {
    for (const mark of (await page.locator('[data-mark]').all()).slice(0, 12)) await mark.hover({ force: true });
  }],
  ['yard: through the marks by arrow keys', async (page) => {
    // By the keyboard itself: what a program focuses would count as a shift that nobody asked for.
    await page.getByRole('heading', { level: 1 }).focus();
    while (!(await page.evaluate(() => document.activeElement?.matches('[data-mark]') ?? true))) await press('Tab')(page);
    await press('ArrowRight', 4)(page);
    await press('ArrowDown', 14)(page);
  }],
  ['yard: unfold all lanes', async (page) => page.getByRole('button', { name: 'Unfold all lanes' }).click()],
  ['yard: fold all lanes', async (page) => page.getByRole('button', { name: 'Fold all lanes' }).click()],
  ['yard: as a table', async (page) => page.getByText('Table', { exact: true }).click()],
  ['yard: as lanes', async (page) => page.getByText('Lanes', { exact: true }).click()],
  ['yard: a reading typed into a lane', async (page) => {
    await page.getByRole('heading', { level: 1 }).focus();
    await press('r')(page);
    await press('c')(page);
    await page.keyboard.type('129400');
    await press('Enter')(page);
    await page.getByRole('status').filter({ hasText: 'recorded' }).waitFor();
  }],
  ['car', screen('Car')],
  ['car: one of them', link('Car 9 of the yard')],
  ['car: distance', link('Distance and use')],
  ['car: wear', link('Wear and wheels')],
  ['car: data card', link('Data card')],
  ['car: services', link('Services')],
  ['sessions', screen('Sessions')],
  ['parts', screen('Parts')],
  ['parts: shelf', link('The shelf')],
  ['papers', screen('Papers')],
  ['handover', screen('Handover')],
  ['ledger', screen('Ledger')],
  ['ledger: the budget ahead', link('Ahead')],
  ['settings', screen('Settings')],
  ['settings: planning', async (page) => { await page.goto(new URL('/settings/planning', page.url()).href); await page.waitForTimeout(1500); }],
];
