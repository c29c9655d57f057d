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
  const faults: string[] = [];
  for (const { id, help, nodes } of violations) {
    for (const { target, failureSummary } of nodes) {
      // What a note at the edge of the window covers is scrolled from under it: where it stands then is what counts.
      if (id === 'target-size' && rules.length === 0 && /partially obscured/.test(failureSummary ?? '') && !(await isSmallInSight(page, target.join(' ')))) continue;
      faults.push(`${id} at ${target.join(' ')}: ${help}. ${failureSummary ?? ''}`);
    }
  }
  return faults;
}

/** Whether a target is still too small in the middle of the window. */
async function isSmallInSight(page: Page, target: string): Promise<boolean> {
  const before = await page.evaluate(() => scrollY);
  await page.locator(target).evaluate((one) => one.scrollIntoView({ block: 'center' }));
  const faults = await axeFaults(page, ['target-size'], target);
  await page.evaluate((y) => scrollTo(0, y), before);
  return faults.length > 0;
}
