import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import type { WindowOptions } from '../program/browser-window.ts';
import type { TwoWay } from '../two-way.ts';
import type { Addresses } from './addresses.ts';
import type { StageNotes } from './stage-notes.ts';

/** What the page of a window needs around it. */
export interface WindowSetting {
  readonly browser: Browser;
  readonly program: TwoWay;
  readonly window: number;
  readonly options: WindowOptions;
  readonly context: BrowserContextOptions;
  readonly notes: StageNotes;
  readonly addresses: Addresses;
  readonly onPage: (page: Page) => void;
  readonly alterations: Alterations;
}

/** What stands between the program's answers and the page, by channel. */
export type Alterations = Map<string, (reply: unknown) => unknown>;
