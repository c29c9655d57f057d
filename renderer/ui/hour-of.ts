import { isMadeUp } from '../../shared-core/result/words/made-up.ts';
import { spokenLocale } from '../../shared-core/result/words/speaking.ts';

/** The time of day of an instant, where one is. @example hourOf('2026-12-05T20:40:00.000Z') //=> '20:40' */
export function hourOf(instant: string): string {
  return new Intl.DateTimeFormat(isMadeUp(spokenLocale()) ? 'en-GB' : spokenLocale(), { hour: '2-digit', minute: '2-digit' }).format(new Date(instant));
}
