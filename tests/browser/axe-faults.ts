import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/**
 * What axe finds wrong on a page as it stands, one line a fault: rule, element, what to do. Empty when nothing is. The page must
 * come from a context of its own: `(await browser.newContext()).newPage()`.
 *
 * @example expect(await axeFaults(page)).toEqual([])
 */
export async function axeFaults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.flatMap(({ id, help, nodes }) => nodes.map(({ target, failureSummary }) => `${id} at ${target.join(' ')}: ${help}. ${failureSummary ?? ''}`));
}
