import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { Keyboard } from '../keyboard.ts';

/** How a person works the program: the same steps, by one means alone. */
export interface Hands {
  readonly name: 'mouse' | 'keyboard';
  /** Presses of the mouse, or keys apart from what is typed. */
  readonly count: number;
  /** Faulty steps of the focus; a mouse has none. */
  readonly faults: readonly string[];
  /** A button or link; by keyboard the program's own keys do it, where they are given. */
  press(name: string | RegExp, ...keys: readonly string[]): Promise<void>;
  tick(name: string | RegExp): Promise<void>;
  /** Types over what stands in a field. */
  fill(label: string | RegExp, text: string): Promise<void>;
  /** Types into the field that has the focus already, and ends with Enter. */
  enter(text: string): Promise<void>;
  choose(label: string | RegExp, option: string): Promise<void>;
  /** Hands a file over at the button that asks for one. */
  hand(name: string | RegExp, path: string): Promise<void>;
}

export const HANDS = ['mouse', 'keyboard'] as const;

/** The hands for a page. */
export function handsFor(name: Hands['name'], page: Page): Hands {
  return name === 'mouse' ? new MouseHands(page) : new KeyboardHands(page);
}

class MouseHands implements Hands {
  readonly name = 'mouse';
  readonly faults: readonly string[] = [];
  count = 0;
  private readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  press = (name: string | RegExp) => this.click(['button', 'link'], name);
  tick = (name: string | RegExp) => this.click(['checkbox'], name);

  async fill(label: string | RegExp, text: string): Promise<void> {
    const field = await this.the(['textbox'], label);
    this.count += 1;
    await field.click({ clickCount: 3 });
    await this.page.keyboard.type(text);
  }

  async enter(text: string): Promise<void> {
    await this.page.keyboard.type(text);
    this.count += 1;
    await this.page.keyboard.press('Enter');
  }

  /** The list of a select is drawn by the system, out of the page's reach: it is pressed for real, and chosen from for us. */
  async choose(label: string | RegExp, option: string): Promise<void> {
    const list = await this.the(['combobox'], label);
    this.count += 2;
    await list.click({ trial: true });
    await list.selectOption(option);
  }

  async hand(name: string | RegExp, path: string): Promise<void> {
    const asked = this.page.waitForEvent('filechooser');
    await this.click(['button'], name);
    await (await asked).setFiles(path);
  }

  private async click(roles: readonly Role[], name: string | RegExp): Promise<void> {
    const target = await this.the(roles, name);
    this.count += 1;
    await target.click();
  }

  private the(roles: readonly Role[], name: string | RegExp): Promise<Locator> {
    return theOneOf(this.page, roles, name);
  }
}

type Role = 'button' | 'link' | 'checkbox' | 'textbox' | 'combobox';

/** The first that is to be seen; of a sheet that lies over the screen, where there is one. */
async function theOneOf(page: Page, roles: readonly Role[], name: string | RegExp): Promise<Locator> {
  const sheet = page.getByRole('dialog');
  const within = (await sheet.count()) === 0 ? page.locator('body') : sheet.last();
  const [first, ...others] = roles.map((role) => within.getByRole(role, { name, exact: true }));
  return others.reduce((all, one) => all.or(one), first as Locator).filter({ visible: true }).first();
}

class KeyboardHands implements Hands {
  readonly name = 'keyboard';
  count = 0;
  private readonly page: Page;
  private readonly keys: Keyboard;

  constructor(page: Page) {
    this.page = page;
    this.keys = new Keyboard(page);
  }

  get faults(): readonly string[] {
    return this.keys.faults;
  }

  async press(name: string | RegExp, ...keys: readonly string[]): Promise<void> {
    if (keys.length === 0) await this.to(['button', 'link'], name);
    for (const key of keys.length === 0 ? ['Enter'] : keys) await this.key(key);
  }

  async tick(name: string | RegExp): Promise<void> {
    await this.to(['checkbox'], name);
    await this.key('Space');
  }

  async fill(label: string | RegExp, text: string): Promise<void> {
    await this.to(['textbox'], label);
    await this.key('Control+A');
    await this.page.keyboard.type(text);
  }

  async enter(text: string): Promise<void> {
    await this.page.keyboard.type(text);
    await this.key('Enter');
  }

  async choose(label: string | RegExp, option: string): Promise<void> {
    await this.to(['combobox'], label);
    const chosen = () => this.page.evaluate(() => (document.activeElement as HTMLSelectElement).selectedOptions[0]?.text);
    await this.key('Home');
    for (let step = 0; (await chosen()) !== option && step < 40; step += 1) await this.key('ArrowDown');
    expect(await chosen()).toBe(option);
  }

  async hand(name: string | RegExp, path: string): Promise<void> {
    const asked = this.page.waitForEvent('filechooser');
    await this.press(name);
    await (await asked).setFiles(path);
  }

  /** Nobody goes to what is not yet to be seen. */
  private async to(roles: readonly Role[], name: string | RegExp): Promise<void> {
    await (await theOneOf(this.page, roles, name)).waitFor();
    await this.atRest();
    this.count += await this.keys.to(name);
  }

  /** A sheet takes the focus a moment after it is there: later than a page is driven, sooner than a hand moves. */
  private async atRest(): Promise<void> {
    await this.page.waitForFunction(() => {
      const sheets = [...document.querySelectorAll('[role=dialog]')];
      return sheets.length === 0 || sheets.some((sheet) => sheet.contains(document.activeElement));
    });
    await this.page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve))));
  }

  private async key(key: string): Promise<void> {
    this.count += 1;
    await this.page.keyboard.press(key);
  }
}
