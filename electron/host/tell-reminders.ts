import { HOUSEHOLD_ID, households } from '../../shared-core/fleet/household.ts';
import { say } from '../../shared-core/result/words/say.ts';
import { remindersOf, type Reminder } from '../../shared-core/views/reminders-view.ts';
import { noteTold, untold, wasToldOn } from '../store/told-table.ts';
import { momentOf, type HostContext } from './host-context.ts';
import { speakAsHousehold } from './speak-as-household.ts';

/** What is shown on the desktop. */
export interface Told {
  readonly title: string;
  readonly body: string;
}

const MOST_NAMED = 3;

/**
 * What is to be told today of what has come up since; null where nothing has, or something was told today. It counts as told from here on:
 * the note is written before it is shown, so that it is shown once at most, whatever stops in between and however many windows ask.
 */
export function tellReminders(context: HostContext): Told | null {
  const { store, facts } = context.household();
  const household = facts.get(households, HOUSEHOLD_ID);
  if (household === null || context.isSample()) return null;
  speakAsHousehold(facts);
  const moment = momentOf(context.world);
  return store
    .transaction((): Told | null => {
      if (wasToldOn(store, moment.today)) return null;
      const standing = remindersOf(facts, moment);
      if (!standing.ok) return null;
      const fresh = new Set(untold(store, standing.value.reminders.map((one) => one.occurrence)));
      const told = standing.value.reminders.filter((one) => fresh.has(one.occurrence));
      if (told.length === 0) return null;
      // What is only counted is named on a day to come.
      noteTold(store, moment.today, moment.now, told.slice(0, MOST_NAMED).map((one) => one.occurrence));
      return wordsOf(told, household.name);
    })
    .immediate();
}

/** The gravest by name, the rest by their number. */
function wordsOf(told: readonly Reminder[], household: string): Told {
  const more = told.length - MOST_NAMED;
  return {
    title: say({ key: told[0]?.late === true ? 'reminder-title-late' : 'reminder-title', values: { household } }),
    body: [...told.slice(0, MOST_NAMED).map((one) => one.text), ...(more > 0 ? [say({ key: 'reminder-more', values: { n: more } })] : [])].join('\n'),
  };
}
