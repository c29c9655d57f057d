import type { Page } from 'playwright-core';
import { axeFaults } from '../axe-faults.ts';
import { namesWanting } from './names-wanting.ts';
import { settled, visit, type Place } from './place.ts';
import { coveredFocus, headingFaults, smallTargets } from './page-faults.ts';
import { putInto, type ThemeName } from './themes.ts';

/** In CSS pixels: a small screen, that screen at 200 %, and the width of 1.4.10. */
const USUAL = { width: 1280, height: 800 };
const ENLARGED = { width: 640, height: 400 };
const NARROW = { width: 320, height: 640 };
/** A form is looked at in the darker of the two high contrasts alone: every pair of both is held against its contrast by the tokens. */
const OTHER_THEMES = { screen: ['dark', 'contrast-light', 'contrast-dark'], form: ['dark', 'contrast-dark'] } as const satisfies Readonly<Record<string, readonly ThemeName[]>>;

/** All that is wrong with a place, one line a fault. Sources: WCAG 2.2, by axe where no other is named. */
export async function lookOver(page: Page, place: Place): Promise<readonly string[]> {
  await page.setViewportSize(USUAL);
  await putInto(page, 'light');
  await visit(page, place);
  // What lies beneath a form is looked at as a place of its own.
  const within = (await page.locator('[role=dialog]').count()) > 0 ? '[role=dialog]' : 'html';
  const faults = [
    ...(await axeFaults(page, [], within)),
    ...(await page.evaluate(headingFaults)),
    ...(await page.evaluate(smallTargets)),
    ...(await namesWanting(page)),
    ...((await page.evaluate(() => document.getAnimations().length)) > 0 ? ['something moves, though motion is to be reduced'] : []),
  ];
  for (const theme of OTHER_THEMES[place.press === undefined ? 'screen' : 'form']) {
    await putInto(page, theme);
    faults.push(...(await axeFaults(page, ['color-contrast'], within)).map((fault) => `${theme}: ${fault}`));
  }
  await page.setViewportSize(ENLARGED);
  if (place.overlaid !== true) faults.push(...(await page.evaluate(coveredFocus)));
  if (place.wide !== true) faults.push(...(await reflowFaults(page)));
  return faults.map((fault) => `${place.name}: ${fault}`);
}

/** 1.4.10 (seen): nothing is moved sideways at 320 pixels. */
async function reflowFaults(page: Page): Promise<string[]> {
  await page.setViewportSize(NARROW);
  await settled(page);
  const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  return over > 0 ? [`at ${NARROW.width} pixels the page is ${over} pixels too wide`] : [];
}
