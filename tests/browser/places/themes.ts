import type { Page } from 'playwright-core';
import { settled } from './place.ts';

/** The themes that a page follows of itself, as its computer asks for them. */
export const THEMES = {
  light: { colorScheme: 'light', contrast: 'no-preference' },
  dark: { colorScheme: 'dark', contrast: 'no-preference' },
  'contrast-light': { colorScheme: 'light', contrast: 'more' },
  'contrast-dark': { colorScheme: 'dark', contrast: 'more' },
} as const;
export type ThemeName = keyof typeof THEMES;

/** Puts a page into a theme, as it stands. */
export async function putInto(page: Page, theme: ThemeName): Promise<void> {
  await page.emulateMedia(THEMES[theme]);
  const { colorScheme, contrast } = THEMES[theme];
  await page.waitForFunction(([scheme, more]) => {
    const { mantineColorScheme, contrast: worn } = document.documentElement.dataset;
    return mantineColorScheme === scheme && (worn === 'more') === more;
  }, [colorScheme, contrast === 'more'] as const);
  await settled(page);
}
