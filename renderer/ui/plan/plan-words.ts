import type { Said } from '../../../shared-core/views/plan-said.ts';
import type { SessionView } from '../../../shared-core/views/session-view.ts';
import { minorFromText } from '../../../shared-core/units/money.ts';
import type { HouseholdWords } from '../household-words.ts';
import { tell } from '../words/tell.ts';

/** A day with its weekday, and the year where it is not this one. @example sessionDay('2026-11-28', '2026-11-25', words) //=> 'Sat 28 Nov' */
export function sessionDay(day: string, today: string, words: HouseholdWords): string {
  return `${words.weekday(day)} ${words.nearDate(day, today)}`;
}

type Named = Pick<SessionView, 'day' | 'placeName'>;

/** What a session is called. @example sessionTitle(session, '2026-11-25', words) //=> 'Sat 28 Nov, the drive' */
export function sessionTitle({ day, placeName }: Named, today: string, words: HouseholdWords): string {
  return tell('session.title', { day: sessionDay(day, today, words), place: placeName });
}

/** Whether it is proposed, kept, or kept where the keeper has moved it; of a day that has passed, that nobody has said how it went. */
export function sessionState({ state, passed }: Pick<SessionView, 'state' | 'passed'>): string {
  if (passed) return tell('session.state-passed');
  return tell(state === 'proposed' ? 'session.state-proposed' : state === 'moved' ? 'session.state-moved' : 'session.state-kept');
}

/** How many tasks, and that they come on top of a kept session. */
export function sessionTasks(session: Pick<SessionView, 'tasks'>, joins: boolean): string {
  return tell(joins ? 'session.more-tasks' : 'session.tasks', { n: session.tasks.length });
}

/**
 * A sentence of the core with its amounts as the household writes them.
 *
 * @example inOwnMoney('It costs 221.20 GBP.', words) //=> 'It costs £221.20.'
 */
export function inOwnMoney(text: string, words: HouseholdWords): string {
  return text.replace(new RegExp(`(?<![\\d.])(\\d+(?:\\.\\d+)?) ${words.currency}\\b`, 'g'), (whole, amount: string) => {
    const minor = minorFromText(amount, words.currency);
    return minor === null ? whole : words.money(minor);
  });
}

/** Sentences one after another. */
export function sayAll(all: readonly Pick<Said, 'text'>[], words: HouseholdWords): string {
  return all.map((one) => inOwnMoney(one.text, words)).join(' ');
}
