import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { mustAsk } from '../browser/ask-host.ts';
import { chromiumHere } from '../browser/launch-chromium.ts';
import { startHousehold } from '../browser/served-page.ts';
import { launchStage } from './rehearsal/launch-stage.ts';
import { rehearse, type Rehearsal } from './rehearsal/rehearse.ts';

const PNG = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==';

/** The window around its page, with the real main.ts and a real page: what a person does to it, and what it does to them. */
describe.skipIf(chromiumHere === null)('the window', { timeout: 120_000 }, () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'window-'));
  const home = path.join(folder, 'home');
  const household = path.join(folder, 'ours');
  const words = ['--household', household, '--on', '2026-11-25'];
  let browser: Browser;
  let rehearsal: Rehearsal;
  let page: Page;

  const open = async () => {
    rehearsal = rehearse({ browser, args: words, home });
    page = await rehearsal.page();
  };
  beforeAll(async () => {
    mkdirSync(home);
    browser = await launchStage();
    await open();
    await startHousehold(page);
  });
  afterAll(async () => {
    await rehearsal.stop();
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  });

  test('has a menu in plain words, without a way to load the page anew', async () => {
    const menu = await rehearsal.menu();
    expect(menu.map(({ label }) => label)).toEqual(['Household', 'Edit', 'View', 'Window', 'Help']);
    const all = menu.flatMap(({ items }) => items);
    expect(all.map(({ role }) => role)).not.toContain('reload');
    expect(all.every(({ label }) => /^[A-Z][a-z]+/.test(label))).toBe(true);
    expect(new Set(all.flatMap(({ accelerator }) => accelerator ?? []))).toEqual(new Set(['CmdOrCtrl+O', 'CmdOrCtrl+P', 'CmdOrCtrl+Q']));
  });

  test('prints its page by the menu, and shows where the household lies', async () => {
    const [labels] = (await rehearsal.menu()).map(({ items }) => items.map(({ label }) => label));
    const [, show = '', print = ''] = labels ?? [];
    await rehearsal.pressMenu('Household', print);
    await rehearsal.pressMenu('Household', show);
    await expect.poll(() => [rehearsal.notes.printed, rehearsal.notes.opened]).toEqual([[{ silent: false, printBackground: true }], [household]]);
  });

  test('a folder that is no household is refused with its sentence, and the one that is open stays', async () => {
    const other = path.join(folder, 'other');
    mkdirSync(other);
    writeFileSync(path.join(other, 'letter.txt'), 'mine');
    rehearsal.answerDialogs('open', { canceled: false, filePaths: [other] });
    const openOther = (await rehearsal.menu())[0]?.items[0]?.label ?? '';
    await rehearsal.pressMenu('Household', openOther);
    await expect.poll(() => rehearsal.notes.dialogs.map(({ kind }) => kind)).toEqual(['open', 'message']);
    expect(JSON.stringify(rehearsal.notes.dialogs[1]?.options)).toContain(other);
    expect(rehearsal.notes.relaunches).toEqual([]);
    expect(await mustAsk(page, 'household.state', {})).toMatchObject({ household: { name: 'Ours' } });
  });

  test('a second start brings it to the front; one for another household is told which is open', async () => {
    const focused = rehearsal.notes.focused;
    const second = rehearse({ browser, args: words, home });
    expect(await second.ended).toBe(0);
    await expect.poll(() => rehearsal.notes.focused).toBe(focused + 1);
    const dialogs = rehearsal.notes.dialogs.length;
    const third = rehearse({ browser, args: ['--household', path.join(folder, 'third')], home });
    expect(await third.ended).toBe(0);
    await expect.poll(() => rehearsal.notes.dialogs.length).toBe(dialogs + 1);
    expect(JSON.stringify(rehearsal.notes.dialogs.at(-1)?.options)).toContain(household);
  });

  test('a paper is saved where the person says; what is not the household’s is not saved at all', async () => {
    const { paper } = await mustAsk(page, 'paper.keep', { name: 'a.png', base64: PNG });
    const save = (href: string, name: string) => page.evaluate(([to, as]) => Object.assign(document.createElement('a'), { href: to, download: as }).click(), [href, name] as const);
    const saved = page.waitForEvent('download');
    await save(`/papers/${paper.id}`, '');
    expect(readFileSync(await (await saved).path()).toString('base64')).toBe(PNG);
    await expect.poll(() => rehearsal.notes.downloads).toMatchObject([{ goesOn: true, dialog: { defaultPath: path.join(home, 'downloads', `paper-${paper.id.slice(0, 12)}.png`) } }]);
    await save('data:text/html,x', '..\\..\\autoexec.bat');
    await expect.poll(() => rehearsal.notes.downloads.length).toBe(2);
    expect(rehearsal.notes.downloads[1]).toMatchObject({ goesOn: false });
  });

  test('its place is found again at the next start, and what was entered is there', async () => {
    await rehearsal.ask('moved-to', 1, { x: 40, y: 50, width: 1100, height: 700 });
    await mustAsk(page, 'car.add', { id: 'pip', name: 'Pip' });
    await mustAsk(page, 'obligation.add', { id: 'tax', car: 'pip', kind: 'road-tax', lastValidDay: '2026-11-28' as never });
    expect(await rehearsal.stop()).toBe(0);
    await open();
    await expect.poll(() => rehearsal.ask('state', 1)).toMatchObject({ bounds: { x: 40, y: 50, width: 1100, height: 700 }, visible: true });
    expect(page.viewportSize()).toEqual({ width: 1100, height: 700 });
    expect(await mustAsk(page, 'car.show', { car: 'pip' })).toMatchObject({ car: { name: 'Pip' } });
  });

  test('what is due is told of by the system, and a press of that brings the window to the front', async () => {
    await expect.poll(() => rehearsal.notes.notifications.length).toBe(1);
    expect(JSON.stringify(rehearsal.notes.notifications)).toContain('Pip');
    const focused = rehearsal.notes.focused;
    await rehearsal.ask('press-notification', 0);
    await expect.poll(() => rehearsal.notes.focused).toBe(focused + 1);
  });

  test('a page that ends is told of and shown anew; the host went on', async () => {
    const dialogs = rehearsal.notes.dialogs.length;
    await page.evaluate(() => Reflect.set(window, 'before', true));
    await rehearsal.ask('page-gone', 1, 'crashed');
    await expect.poll(() => rehearsal.notes.dialogs.length).toBe(dialogs + 1);
    await expect.poll(() => page.evaluate(() => Reflect.has(window, 'before'))).toBe(false);
    await page.getByRole('heading', { name: 'The yard' }).waitFor();
    expect(await mustAsk(page, 'household.examine', {})).toMatchObject({ faults: [] });
  });

  test('a change by another program is told to the page', async () => {
    const { composeHost } = await import('../../electron/host/compose-host.ts');
    const { realWorld } = await import('../../electron/host/real-world.ts');
    const other = composeHost(household, realWorld());
    if (!other.ok) throw new Error(other.refusal.code);
    await other.value.call('car.add', { id: 'wren', name: 'Wren' });
    await other.value.close();
    await page.getByText('Wren').first().waitFor();
  });
});
