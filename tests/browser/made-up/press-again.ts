import type { Locator, Page } from 'playwright-core';
import { settled, type Place } from '../places/place.ts';

const PRESSABLE = 'button, a, summary, [role=button]';

/** Goes to a place and notes which things were pressed there, by their order on the page: they are found so whatever they are called. */
export async function notePresses(page: Page, place: Place): Promise<readonly number[]> {
  const noted: number[] = [];
  await goTo(page, place.address);
  for (const name of place.press ?? []) {
    const pressed = page.getByRole('button', { name }).or(page.getByRole('link', { name })).or(page.locator('summary').filter({ hasText: name })).first();
    noted.push(await orderOf(pressed));
    await pressed.click();
    await settled(page);
  }
  return noted;
}

/** Goes to a place by what was noted. */
export async function pressAgain(page: Page, { address }: Place, noted: readonly number[]): Promise<void> {
  await goTo(page, address);
  for (const at of noted) {
    await page.locator(PRESSABLE).nth(at).click();
    await settled(page);
  }
}

function orderOf(pressed: Locator): Promise<number> {
  return pressed.evaluate((element, pressable) => [...document.querySelectorAll(pressable)].indexOf(element.closest(pressable) ?? element), PRESSABLE);
}

async function goTo(page: Page, address: string): Promise<void> {
  for (const to of ['/nowhere', address]) {
    await page.evaluate((path) => {
      scrollTo(0, 0);
      history.pushState(null, '', path);
      dispatchEvent(new PopStateEvent('popstate'));
    }, to);
    await settled(page);
  }
}
