import type { Page } from 'playwright-core';

/** What has the focus, as a person sees and hears it. */
export interface Focused {
  readonly name: string;
  readonly visible: boolean;
  readonly onScreen: boolean;
  /** Whether it stands after the element that had the focus before, in the order of the page. */
  readonly follows: boolean;
}

const MOST_STEPS = 120;

/** Drives a page by the keyboard alone and notes every faulty step of the focus: hidden, off the screen, or out of order. */
export class Keyboard {
  readonly faults: string[] = [];
  private readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  /** Tab until the element of that name has the focus, and say how often; a name that is never reached is a failure of the test. */
  async to(name: string | RegExp): Promise<number> {
    const met: string[] = [];
    for (let step = 0; step < MOST_STEPS; step += 1) {
      const focused = await this.focused();
      if (typeof name === 'string' ? focused.name === name : name.test(focused.name)) return step;
      met.push(focused.name);
      await this.page.keyboard.press('Tab');
      await this.judge();
    }
    throw new Error(`Tab never reached ${String(name)}; it met: ${[...new Set(met)].join(' | ')}`);
  }

  /** Goes to a button or link and presses it. */
  async press(name: string | RegExp): Promise<void> {
    await this.to(name);
    await this.page.keyboard.press('Enter');
  }

  /** Goes to a field and types over what is in it; a date (YYYY-MM-DD) in the order of the browser's own tongue, American English. */
  async fill(name: string | RegExp, text: string): Promise<void> {
    await this.to(name);
    const date = await this.page.evaluate(() => (document.activeElement as HTMLInputElement).type === 'date');
    if (!date) await this.page.keyboard.press('Control+A');
    const [year, month, day] = text.split('-');
    await this.page.keyboard.type(date ? `${month}${day}${year}` : text);
  }

  private async judge(): Promise<void> {
    const { name, visible, onScreen, follows } = await this.focused();
    if (!visible) this.faults.push(`the focus is not to be seen on "${name}"`);
    if (!onScreen && !(await this.comesToRestOnScreen())) this.faults.push(`"${name}" has the focus and is off the screen`);
    if (!follows) this.faults.push(`"${name}" has the focus out of order`);
  }

  /** A sheet that slides in, or a page that scrolls, is given the time to come to rest. */
  private async comesToRestOnScreen(): Promise<boolean> {
    await this.page.waitForFunction(() => document.getAnimations().every((one) => one.playState !== 'running'));
    const box = await this.page.evaluate(() => {
      const { top, bottom, left, right } = (document.activeElement ?? document.body).getBoundingClientRect();
      return { top, bottom, left, right, height: innerHeight, width: innerWidth };
    });
    return box.bottom > 0 && box.top < box.height && box.right > 0 && box.left < box.width;
  }

  private focused(): Promise<Focused> {
    return this.page.evaluate(() => {
      const element = document.activeElement ?? document.body;
      const holder = window as unknown as { before?: Element | null };
      const before = holder.before ?? null;
      holder.before = element;
      const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(element);
      const box = element.getBoundingClientRect();
      const labels = (element as HTMLInputElement).labels;
      const described = element.getAttribute('aria-labelledby')?.split(' ').map((id) => document.getElementById(id)?.textContent ?? '').join(' ');
      const label = labels === null || labels === undefined || labels.length === 0 ? null : [...labels].map((one) => one.textContent).join(' ');
      const isBody = element === document.body;
      // From the last element of the page, or of a dialog, the focus goes round to the first: that is in order too.
      const wraps = before === null || before === element || before === document.body || !before.isConnected || element.closest('[role=dialog]') !== before.closest('[role=dialog]');
      const after = before !== null && (before.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
      const all = [...(element.closest('[role=dialog]') ?? document).querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, [tabindex="0"]')].filter((one) => one.tabIndex >= 0 && one.getClientRects().length > 0);
      const first = all[0] === element;
      return {
        name: (element.getAttribute('aria-label') ?? described ?? label ?? element.textContent ?? '').trim().replace(/\s+/g, ' ').slice(0, 120),
        visible: isBody || (outlineStyle !== 'none' && parseFloat(outlineWidth) > 0) || boxShadow !== 'none',
        onScreen: isBody || (box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth),
        follows: isBody || wraps || after || first,
      };
    });
  }
}
