import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/**
 * What axe finds wrong on a page as it stands, one line a fault: rule, element, what to do. Empty when nothing is. One frame and
 * the faults alone are asked for (`setLegacyMode`, `resultTypes`): the same rules, in a third of the time. Its rule for the size of targets
 * (2.5.8) is off by itself and looked at too; where rules are named, those alone; where a part is named, what is in it.
 *
 * @example expect(await axeFaults(page)).toEqual([])
 */
export async function axeFaults(page: Page, rules: readonly string[] = [], within = 'html'): Promise<string[]> {
  const axe = new AxeBuilder({ page }).include(within).setLegacyMode(true).options({ resultTypes: ['violations'], preload: false, ...(rules.length > 0 ? { runOnly: [...rules] } : { rules: { 'target-size': { enabled: true } } }) });
  const { violations } = await axe.analyze();
  return violations.flatMap(({ id, help, nodes }) => nodes.map(({ target, failureSummary }) => `${id} at ${target.join(' ')}: ${help}. ${failureSummary ?? ''}`));
}
