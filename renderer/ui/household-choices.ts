import { dateWriter } from '../../shared-core/result/words/write-date.ts';
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

/** The English ways of speaking and of writing dates and numbers, and the one that is chosen now. */
export function localeChoices(now: string): Choice[] {
  const offered = ['en-GB', 'en-US', 'en-AU', 'en-CA', 'en-IE', 'en-NZ', 'en-ZA'];
  return [...new Set([...offered, now])].map((locale) => ({ value: locale, label: `${locale}: ${dateWriter(locale)('2026-11-25')}` }));
}
