import type { Page, Request } from 'playwright-core';

/** One thing that the page can show: a screen, a leaf of one, a form laid over it, or a state of it. */
export interface Place {
  /** Also the name of its picture. */
  readonly name: string;
  readonly address: string;
  /** What to press there, one after the other, until it is shown. */
  readonly press?: readonly Press[];
  /** Shows a time axis or a sheet of fixed measures, which needs both dimensions and is no matter of reflow. */
  readonly wide?: true;
  /** Something that the person opened lies over a part of it, until Escape (2.4.11, note 2). */
  readonly overlaid?: true;
}

/** A button, link or fold to be pressed: the first of that name. */
export type Press = string | RegExp;

/** No such screen: what was laid over the one before is gone there. */
const NOWHERE = '/nowhere';

/** Goes to a place within the page as it stands, and waits until nothing more comes. */
export async function visit(page: Page, { address, press = [] }: Place): Promise<void> {
  await goTo(page, NOWHERE);
  await goTo(page, address);
  for (const name of press) {
    await page.getByRole('button', { name }).or(page.getByRole('link', { name })).or(page.locator('summary').filter({ hasText: name })).first().click();
    await settled(page);
  }
}

async function goTo(page: Page, address: string): Promise<void> {
  await page.evaluate((to) => {
    scrollTo(0, 0);
    history.pushState(null, '', to);
    dispatchEvent(new PopStateEvent('popstate'));
  }, address);
  await settled(page);
}

/** The answers are there, the pictures loaded, and nothing moves. */
export async function settled(page: Page): Promise<void> {
  const waitingFor = askedBy(page);
  do {
    await page.waitForFunction(() => {
      const asking = [...document.querySelectorAll('[role=status]')].some((one) => /^Asking …|^Adding up …|are fetched …$/.test(one.textContent ?? ''));
      const loading = [...document.images].some((one) => !one.complete && one.loading !== 'lazy');
      const moving = document.getAnimations().some((one) => one.playState === 'running');
      return document.querySelector('h1') !== null && !asking && !loading && !moving && document.fonts.status === 'loaded';
    });
    // What is pressed asks in the next frame, and what is answered is drawn in one.
    await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
  } while (waitingFor.size > 0);
}

const asked = new WeakMap<Page, Set<Request>>();

/** What a page has asked its host and not been answered; heard from the first time on. */
function askedBy(page: Page): ReadonlySet<Request> {
  const known = asked.get(page);
  if (known !== undefined) return known;
  const open = new Set<Request>();
  asked.set(page, open);
  page.on('request', (request) => request.url().includes('/operations/') && open.add(request));
  page.on('requestfinished', (request) => open.delete(request));
  page.on('requestfailed', (request) => open.delete(request));
  return open;
}
