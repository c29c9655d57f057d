import type { BrowserContextOptions, Page } from 'playwright-core';

/** What a shell is opened with. */
export interface ShellOptions {
  readonly household: string;
  /** The day it is taken to be. */
  readonly on: string;
  readonly context: BrowserContextOptions;
  /** Sees the page before anything is loaded in it. */
  readonly onPage: (page: Page) => void;
}

/** Changes an answer of the host on its way to the page, or waits before it goes on. */
export type Alteration = (reply: unknown) => unknown;

/** The dashboard of a household in one of the ways a person has it, in a real Chromium. */
export interface Shell {
  readonly page: Page;
  /** Stands between host and page for one operation; the answer ends it. */
  alter(operation: string, change: Alteration): Promise<() => Promise<void>>;
  /** Ends the program in order where it still runs, and the browser. */
  stop(): Promise<void>;
  /** Ends the program at once, as when the power fails: nothing of it can tidy up. A browser's page stays; a window is gone with its program. */
  kill(): Promise<void>;
  readonly pageOutlivesProgram: boolean;
}
