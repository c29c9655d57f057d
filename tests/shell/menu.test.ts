import type { MenuItemConstructorOptions } from 'electron';
import { describe, expect, test, vi } from 'vitest';
import { menuTemplate, type MenuActions } from '../../electron/shell/menu.ts';

const actions = () => ({ openOther: vi.fn(), showFolder: vi.fn(), print: vi.fn(), quit: vi.fn(), about: vi.fn(), licences: vi.fn() });
const menu = (platform: NodeJS.Platform, packaged = true, given: MenuActions = actions()) => menuTemplate(given, { platform, packaged });
const inside = (item: MenuItemConstructorOptions | undefined) => (Array.isArray(item?.submenu) ? item.submenu : []);
const all = (items: readonly MenuItemConstructorOptions[]): MenuItemConstructorOptions[] => items.flatMap((item) => [item, ...all(inside(item))]);
const labels = (items: readonly MenuItemConstructorOptions[]) => items.map((item) => item.label ?? item.role ?? item.type);

describe('the menu', () => {
  test('has its entries in plain words', () => {
    const shown = menu('linux');
    expect(labels(shown)).toEqual(['Household', 'Edit', 'View', 'Window', 'Help']);
    expect(shown.map((item) => labels(inside(item)))).toEqual([
      ['Open another household’s folder…', 'Show the household’s folder', 'separator', 'Print…', 'separator', 'Quit'],
      ['Undo typing', 'Redo typing', 'separator', 'Cut', 'Copy', 'Paste', 'Delete', 'separator', 'Select all'],
      ['Larger', 'Smaller', 'Actual size', 'separator', 'Full screen'],
      ['Minimise', 'Close'],
      ['About Trunnion', 'Licences of the libraries'],
    ]);
  });

  test('does what its entries say', () => {
    const given = actions();
    const items = all(menu('linux', true, given));
    for (const id of ['menu-open-other', 'menu-show-folder', 'menu-print', 'menu-quit', 'menu-about', 'menu-licences']) (items.find((item) => item.id === id)?.click as () => void)();
    expect(Object.values(given).map((act) => act.mock.calls.length)).toEqual([1, 1, 1, 1, 1, 1]);
  });

  test('leaves the system what is the system’s', () => {
    const roles = all(menu('win32')).map((item) => item.role).filter((role) => role !== undefined);
    expect(roles).toEqual(['undo', 'redo', 'cut', 'copy', 'paste', 'delete', 'selectAll', 'zoomIn', 'zoomOut', 'resetZoom', 'togglefullscreen', 'minimize', 'close']);
  });

  test.each(['linux', 'win32', 'darwin'] as const)('never loads the page anew on %s, made for others or not', (platform) => {
    for (const packaged of [true, false]) expect(all(menu(platform, packaged)).filter((item) => /reload/i.test(`${item.role} ${item.id}`))).toEqual([]);
  });

  test('has the developer tools only when run from its sources', () => {
    const tools = (packaged: boolean) => all(menu('linux', packaged)).filter((item) => item.role === 'toggleDevTools').length;
    expect([tools(true), tools(false)]).toEqual([0, 1]);
  });

  test('is headed by the program’s own on macOS, which quits there', () => {
    const shown = menu('darwin');
    expect(shown[0]).toEqual({ role: 'appMenu' });
    expect(all(shown).filter((item) => item.id === 'menu-quit')).toEqual([]);
  });

  test('cannot open licences that are not there', () => {
    expect(all(menu('linux', true, { ...actions(), licences: null })).find((item) => item.id === 'menu-licences')).toMatchObject({ enabled: false });
  });

  test('has keys of its own, each once, that no typing gives', () => {
    const keys = all(menu('linux')).map((item) => item.accelerator).filter((key) => key !== undefined);
    expect(keys).toEqual(['CmdOrCtrl+O', 'CmdOrCtrl+P', 'CmdOrCtrl+Q']);
  });
});
