import { tell } from './words/tell.ts';

/** A choice in a list. */
export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** Units of distance. */
export function unitChoices(): Choice[] {
  return [
    { value: 'km', label: tell('unit.kilometres') },
    { value: 'mi', label: tell('unit.miles') },
  ];
}

/** Where summer is. */
export function hemisphereChoices(): Choice[] {
  return (['north', 'south', 'none'] as const).map((value) => ({ value, label: tell(`hemisphere.${value}`) }));
}

/** The English ways of writing dates and numbers. */
export function localeChoices(now: string): Choice[] {
  const offered = ['en-GB', 'en-US', 'en-AU', 'en-CA', 'en-IE', 'en-NZ', 'en-ZA'];
  const sample = Date.UTC(2026, 10, 25);
  return [...new Set([...offered, now])].map((locale) => ({ value: locale, label: `${locale}: ${new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' }).format(sample)}` }));
}
