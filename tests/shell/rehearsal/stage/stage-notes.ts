import type { Page } from 'playwright-core';

/** What the program did or was asked around its pages, in order, as a person would have seen it. */
export interface StageNotes {
  readonly pages: Page[];
  /** Addresses that would have been asked of the network. */
  readonly outside: string[];
  readonly windowsAsked: { readonly address: string; readonly answer: 'allow' | 'deny' }[];
  readonly downloads: { readonly address: string; readonly goesOn: boolean; readonly dialog: unknown }[];
  readonly dialogs: { readonly kind: 'message' | 'open' | 'save'; readonly options: Readonly<Record<string, unknown>> }[];
  readonly errorBoxes: { readonly title: string; readonly content: string }[];
  readonly notifications: { readonly title?: string; readonly body?: string }[];
  readonly printed: unknown[];
  readonly opened: string[];
  readonly relaunches: (readonly string[])[];
  focused: number;
}

export function emptyNotes(): StageNotes {
  return { pages: [], outside: [], windowsAsked: [], downloads: [], dialogs: [], errorBoxes: [], notifications: [], printed: [], opened: [], relaunches: [], focused: 0 };
}
