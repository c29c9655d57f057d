import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { axeFaults } from '../axe-faults.ts';
import type { OperationName, ReplyOf, RequestOf } from '../../../shared-core/contract/contract.ts';
import { mustAsk } from '../ask-host.ts';
import { laySample } from '../../sample-build.ts';
import { openServedPage } from '../served-page.ts';
import { handsFor, type Hands } from './hands.ts';

/** A household on its way from one end state to the next, in the hands of one who has no other means. */
export interface Walk {
  readonly page: Page;
  readonly hands: Hands;
  /** Nothing that axe finds on the page as it stands: the same in either hand, so it is looked at in the one that shows the focus too. */
  milestone(where: string): Promise<void>;
  heading(name: string | RegExp): Promise<void>;
  said(text: string | RegExp): Promise<void>;
  /** No sheet lies over the screen any more, and the focus is back on it. */
  closed(): Promise<void>;
  must<Name extends OperationName>(name: Name, request: RequestOf<Name>): Promise<ReplyOf<Name>>;
}

interface Way {
  /** Begins in the sample's yard; else in an empty folder. */
  readonly sample: boolean;
  /** The most presses or keys that the way may take. */
  readonly most: Readonly<Record<Hands['name'], number>>;
}

/** Walks a way once, by one means: nothing complained at its end, the focus never strayed, and it was no longer than it is known to be. */
export async function walk(by: Hands['name'], { sample, most }: Way, steps: (walk: Walk) => Promise<void>): Promise<void> {
  const served = await openServedPage(sample ? { fill: laySample } : {});
  try {
    const { page } = served;
    const hands = handsFor(by, page);
    await page.getByRole('heading', { level: 1 }).waitFor({ timeout: 50_000 });
    await steps({
      page,
      hands,
      milestone: (where) => (by === 'keyboard' ? sound(page, where) : Promise.resolve()),
      heading: (name) => page.getByRole('heading', { name, level: 1 }).waitFor(),
      said: (text) => page.getByRole('status').filter({ hasText: text }).first().waitFor(),
      closed: async () => {
        await page.getByRole('dialog').waitFor({ state: 'detached' });
        await page.waitForFunction(() => document.activeElement !== document.body);
      },
      must: (name, request) => mustAsk(page, name, request),
    });
    expect(hands.faults).toEqual([]);
    expect(served.complaints).toEqual([]);
    expect(hands.count, `${by}: no longer a way than before`).toBeLessThanOrEqual(most[by]);
  } finally {
    await served.close();
  }
}

async function sound(page: Page, where: string): Promise<void> {
  await page.waitForFunction(() => document.getAnimations().every((one) => one.playState !== 'running'));
  expect(await axeFaults(page), where).toEqual([]);
}
