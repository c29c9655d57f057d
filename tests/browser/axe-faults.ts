import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/**
 * What axe finds wrong on a page as it stands, one line a fault: rule, element, what to do. Empty when nothing is. One frame and
 * the faults alone are asked for (`setLegacyMode`, `resultTypes`): the same rules, in a third of the time.
 *
 * @example expect(await axeFaults(page)).toEqual([])
 */
export async function axeFaults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).setLegacyMode(true).options({ resultTypes: ['violations'], preload: false }).analyze();
  return violations.flatMap(({ id, help, nodes }) => nodes.map(({ target, failureSummary }) => `${id} at ${target.join(' ')}: ${help}. ${failureSummary ?? ''}`));
}
