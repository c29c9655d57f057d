import type { Page } from 'playwright-core';

/** What a page took since it was last asked. */
export interface Since {
  /** Milliseconds from the event that waited longest to the paint after it, and which event that was; 0 below 16 ms, which are not told. */
  readonly longest: number;
  readonly on: string;
  /** The sum of the layout shifts that no input called for. */
  readonly shift: number;
  /** What moved in the last of these. */
  readonly moved: string;
}

export interface Watched {
  since(): Promise<Since>;
}

interface Noted {
  longest: number;
  on: string;
  shift: number;
  moved: string;
}

/** An entry of Layout Instability, which the library of the DOM does not know. */
interface Shift {
  readonly value: number;
  readonly hadRecentInput: boolean;
  readonly sources: readonly { readonly node: Node | null }[];
}

declare global {
  interface Window {
    noted: Noted;
  }
}

/** Watches a page from its first script on: events by Event Timing, the wheel (which that leaves out) by the frame after it, shifts by Layout Instability. */
export async function watchPage(page: Page): Promise<Watched> {
  await page.addInitScript(() => {
    const none = (): Noted => ({ longest: 0, on: '', shift: 0, moved: '' });
    window.noted = none();
    const note = (duration: number, name: string) => {
      if (duration <= window.noted.longest) return;
      window.noted.longest = duration;
      window.noted.on = name;
    };
    new PerformanceObserver((list) => list.getEntries().forEach((one) => note(one.duration, one.name))).observe({ type: 'event', durationThreshold: 16, buffered: true } as PerformanceObserverInit);
    new PerformanceObserver((list) => {
      for (const { value, hadRecentInput, sources } of list.getEntries() as unknown as readonly Shift[]) {
        if (hadRecentInput) continue;
        window.noted.shift += value;
        const node = sources[0]?.node;
        window.noted.moved = node instanceof Element ? `${node.nodeName} ${node.className}` : '';
      }
    }).observe({ type: 'layout-shift', buffered: true });
    addEventListener('wheel', ({ timeStamp }) => requestAnimationFrame(() => setTimeout(() => note(performance.now() - timeStamp, 'wheel'))), { passive: true });
  });
  return {
    since: () =>
      page.evaluate(() => {
        const { longest, on, shift, moved } = window.noted;
        window.noted = { longest: 0, on: '', shift: 0, moved: '' };
        return { longest, on, shift, moved };
      }),
  };
}
