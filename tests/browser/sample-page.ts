import type { Page } from 'playwright-core';
import type { OperationName, ReplyOf, RequestOf } from '../../shared-core/contract/contract.ts';
import { mustAsk } from './ask-host.ts';
import { laySample } from '../sample-build.ts';
import { openServedPage, type ServedPage } from './served-page.ts';
import { soundAtEverySize } from './sound-at-every-size.ts';

/** The sample household in a real Chromium, through one of the shells. */
export interface SamplePage {
  readonly page: Page;
  /** What the page complained of; to be empty at the end. */
  readonly complaints: readonly string[];
  readonly alter: ServedPage['alter'];
  /** Asks the host as the page does; a refusal fails the test. */
  must<Name extends OperationName>(name: Name, request: RequestOf<Name>): Promise<ReplyOf<Name>>;
  /** Goes to a leaf of a car by pressing what leads there. */
  goTo(car: string, leaf: string): Promise<void>;
  /** No violation at any size, and nothing sideways. */
  axeAtEverySize(where: string): Promise<void>;
  close(): Promise<void>;
}

/** Opens the sample on a fixed day, as it stands after its button was pressed. */
export async function openSamplePage(): Promise<SamplePage> {
  const { page, complaints, alter, close } = await openServedPage({ fill: laySample });
  await page.getByRole('heading', { name: 'The yard' }).waitFor({ timeout: 50_000 });
  return {
    page,
    complaints,
    alter,
    must: (name, request) => mustAsk(page, name, request),
    goTo: async (car, leaf) => {
      await page.getByRole('navigation').getByRole('link', { name: 'Car', exact: true }).click();
      await page.getByRole('link', { name: car, exact: true }).click();
      await page.getByRole('heading', { name: car, level: 1 }).waitFor();
      await page.getByRole('link', { name: leaf, exact: true }).click();
      await page.locator('a[aria-current=page]', { hasText: leaf }).waitFor();
    },
    axeAtEverySize: (where) => soundAtEverySize(page, where),
    close,
  };
}
