/** What is spoken where no household has said otherwise. */
const BRITISH = 'en-GB';

let spoken = BRITISH;

/**
 * Chooses the locale in which this process speaks from here on: words, dates and plurals. A process has one household open, and speaks as
 * that one does. Nothing that is decided or stored goes by it.
 *
 * @example speakAs('en-US'); sayDate('2026-11-25') //=> 'Nov 25, 2026'
 */
export function speakAs(locale: string | null): void {
  spoken = locale ?? BRITISH;
}

/** The locale in which this process speaks. */
export function spokenLocale(): string {
  return spoken;
}
