import type { Page } from 'playwright-core';
import { settled } from './place.ts';

/** The themes that a page follows of itself, as its computer asks for them. */
export const THEMES = {
  light: { colorScheme: 'light', contrast: 'no-preference' },
  dark: { colorScheme: 'dark', contrast: 'no-preference' },
} as const;
export type ThemeName = keyof typeof THEMES;

/** Puts a page into a theme, as it stands. */
export async function putInto(page: Page, theme: ThemeName): Promise<void> {
  await page.emulateMedia(THEMES[theme]);
  await page.waitForFunction((scheme) => document.documentElement.getAttribute('data-mantine-color-scheme') === scheme, THEMES[theme].colorScheme);
  await settled(page);
}
