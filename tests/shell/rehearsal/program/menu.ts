import { BrowserWindow } from './browser-window.ts';

export interface ItemTemplate {
  readonly label?: string;
  readonly role?: string;
  readonly type?: string;
  readonly accelerator?: string;
  readonly enabled?: boolean;
  readonly visible?: boolean;
  readonly id?: string;
  readonly submenu?: readonly ItemTemplate[] | Menu;
  readonly click?: (item: MenuItem, window: BrowserWindow | null, event: object) => void;
}

/** One entry of a menu. */
export class MenuItem {
  readonly label: string;
  readonly role: string | null;
  readonly type: string;
  readonly accelerator: string | null;
  readonly click: NonNullable<ItemTemplate['click']>;
  readonly submenu: Menu | null;
  readonly id: string | null;
  enabled: boolean;
  visible: boolean;
  constructor({ label, role, type, accelerator, enabled, visible, submenu, click, id }: ItemTemplate) {
    this.label = label ?? role ?? '';
    this.role = role ?? null;
    this.type = type ?? (submenu === undefined ? 'normal' : 'submenu');
    this.accelerator = accelerator ?? null;
    this.enabled = enabled ?? true;
    this.visible = visible ?? true;
    this.id = id ?? null;
    this.click = click ?? (() => undefined);
    this.submenu = submenu === undefined ? null : submenu instanceof Menu ? submenu : Menu.buildFromTemplate(submenu);
  }
}

/** A menu; the one of the program is kept, and the stage presses its entries. */
export class Menu {
  static #ofProgram: Menu | null = null;
  readonly items: MenuItem[] = [];
  static buildFromTemplate(template: readonly (ItemTemplate | MenuItem)[]): Menu {
    const menu = new Menu();
    for (const item of template) menu.append(item instanceof MenuItem ? item : new MenuItem(item));
    return menu;
  }
  static setApplicationMenu(menu: Menu | null): void {
    Menu.#ofProgram = menu;
  }
  static getApplicationMenu(): Menu | null {
    return Menu.#ofProgram;
  }
  append(item: MenuItem): void {
    this.items.push(item);
  }
  getMenuItemById(id: string): MenuItem | null {
    return this.items.find((item) => item.id === id) ?? this.items.map((item) => item.submenu?.getMenuItemById(id) ?? null).find((item) => item !== null) ?? null;
  }
}

/** An entry as the stage sees it. */
export interface SeenItem {
  readonly label: string;
  readonly role: string | null;
  readonly accelerator: string | null;
  readonly enabled: boolean;
  readonly items: readonly SeenItem[];
}

export function seenMenu(menu: Menu | null = Menu.getApplicationMenu()): readonly SeenItem[] {
  const shown = (menu?.items ?? []).filter(({ type, visible }) => visible && type !== 'separator');
  return shown.map(({ label, role, accelerator, enabled, submenu }) => ({ label, role, accelerator, enabled, items: submenu === null ? [] : seenMenu(submenu) }));
}

/** Presses an entry by its labels from the top down. */
export function pressMenu(labels: readonly string[]): void {
  let menu = Menu.getApplicationMenu();
  let item: MenuItem | null = null;
  for (const label of labels) {
    item = menu?.items.find((one) => one.label === label) ?? null;
    menu = item?.submenu ?? null;
  }
  if (item === null || !item.enabled) throw new Error(`no entry ${labels.join(' > ')} that can be pressed`);
  if (item.role !== null) throw new Error(`what the role ${item.role} does is the true program's own`);
  item.click(item, BrowserWindow.getFocusedWindow(), {});
}
