import type { MenuItemConstructorOptions } from 'electron';
import { windowWords, type WindowWord } from './window-words.ts';

/** What the menu does beside what the system does by itself. */
export interface MenuActions {
  readonly openOther: () => void;
  readonly showFolder: () => void;
  readonly print: () => void;
  readonly quit: () => void;
  readonly about: () => void;
  /** Null where there is no file of them. */
  readonly licences: (() => void) | null;
}

export interface MenuPlace {
  readonly platform: NodeJS.Platform;
  /** A program made for others, not one run from its sources. */
  readonly packaged: boolean;
}

type Item = MenuItemConstructorOptions;
const LINE: Item = { type: 'separator' };

/**
 * The program's menu. Nothing in it loads the page anew, which would lose what was typed; its keys are those with Ctrl or Cmd, and the
 * page's own are without.
 */
export function menuTemplate(actions: MenuActions, place: MenuPlace): Item[] {
  const mac: Item[] = place.platform === 'darwin' ? [{ role: 'appMenu' }] : [];
  return [...mac, household(actions, place), edit(), view(place), window(), help(actions)];
}

function household({ openOther, showFolder, print, quit }: MenuActions, { platform }: MenuPlace): Item {
  // On macOS the program's own menu has it.
  const toQuit = platform === 'darwin' ? [] : [LINE, item('menu-quit', { accelerator: 'CmdOrCtrl+Q', click: quit })];
  return item('menu-household', {
    submenu: [
      item('menu-open-other', { accelerator: 'CmdOrCtrl+O', click: openOther }),
      item('menu-show-folder', { click: showFolder }),
      LINE,
      item('menu-print', { accelerator: 'CmdOrCtrl+P', click: print }),
      ...toQuit,
    ],
  });
}

function edit(): Item {
  const roles = [['menu-undo', 'undo'], ['menu-redo', 'redo'], null, ['menu-cut', 'cut'], ['menu-copy', 'copy'], ['menu-paste', 'paste'], ['menu-delete', 'delete'], null, ['menu-select-all', 'selectAll']] as const;
  return item('menu-edit', { submenu: roles.map((one) => (one === null ? LINE : item(one[0], { role: one[1] }))) });
}

function view({ packaged }: MenuPlace): Item {
  const tools = packaged ? [] : [LINE, item('menu-developer-tools', { role: 'toggleDevTools' })];
  return item('menu-view', {
    submenu: [
      item('menu-larger', { role: 'zoomIn' }),
      item('menu-smaller', { role: 'zoomOut' }),
      item('menu-actual-size', { role: 'resetZoom' }),
      LINE,
      item('menu-full-screen', { role: 'togglefullscreen' }),
      ...tools,
    ],
  });
}

function window(): Item {
  return item('menu-window', { submenu: [item('menu-minimise', { role: 'minimize' }), item('menu-close', { role: 'close' })] });
}

function help({ about, licences }: MenuActions): Item {
  const open = licences === null ? { enabled: false } : { click: licences };
  return item('menu-help', { submenu: [item('menu-about', { click: about }), item('menu-licences', open)] });
}

/** An entry with its words; its id is the name of the words. */
function item(id: WindowWord, more: Item): Item {
  return { id, label: windowWords(id), ...more };
}
