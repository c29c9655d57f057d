import { fillPlaces, formFor, type Phrase } from '../../../shared-core/result/words/phrase.ts';
import { phrasesOf } from '../../../shared-core/result/words/phrases-of.ts';
import { sayNumber } from '../../../shared-core/result/words/say.ts';
import { spokenLocale } from '../../../shared-core/result/words/speaking.ts';
import { APP_WORDS } from './app-words.ts';
import { BOOKING_SCREEN_WORDS } from './booking-words.ts';
import { CARD_WORDS } from './card-words.ts';
import { CAR_WORDS } from './car-words.ts';
import { CLOSING_WORDS } from './closing-words.ts';
import { DISTANCE_WORDS } from './distance-words.ts';
import { DOING_SCREEN_WORDS } from './doing-words.ts';
import { DROP_WORDS } from './drop-words.ts';
import { DUE_WORDS } from './due-words-list.ts';
import { FAULT_WORDS } from './fault-words.ts';
import { FOLLOW_UP_SCREEN_WORDS } from './follow-up-words.ts';
import { FORM_WORDS } from './form-words.ts';
import { HANDOVER_WORDS } from './handover-words.ts';
import { IMPORT_SCREEN_WORDS } from './import-words.ts';
import { INTAKE_LEAF_WORDS } from './intake-words.ts';
import { JOB_SHEET_WORDS } from './sheet-words.ts';
import { KEYS_WORDS } from './keys-words.ts';
import { LEDGER_WORDS } from './ledger-words.ts';
import { PACK_WORDS } from './pack-words.ts';
import { PAPERS_WORDS } from './papers-words.ts';
import { PARTS_FORM_WORDS } from './parts-form-words.ts';
import { PARTS_WORDS } from './parts-words.ts';
import { PLANNING_WORDS } from './planning-words.ts';
import { PLAN_SCREEN_WORDS } from './plan-words.ts';
import { PRICES_WORDS } from './prices-words.ts';
import { EARLIER_WORDS } from './earlier-words.ts';
import { RECORD_WORDS } from './record-words.ts';
import { REDACT_WORDS } from './redact-words.ts';
import { SEARCH_SCREEN_WORDS } from './search-words.ts';
import { SERVICES_WORDS } from './services-words.ts';
import { SETTINGS_WORDS } from './settings-words.ts';
import { SET_WORDS } from './set-words.ts';
import { SHEET_EDITOR_WORDS } from './sheet-editor-words.ts';
import { TOUR_WORDS } from './tour-words.ts';
import { WEAR_WORDS } from './wear-words.ts';
import { YARD_WORDS } from './yard-words.ts';

/** What the screens say, British, by key. */
export const SCREEN_WORDS = {
  ...APP_WORDS,
  ...BOOKING_SCREEN_WORDS,
  ...CARD_WORDS,
  ...CAR_WORDS,
  ...CLOSING_WORDS,
  ...DISTANCE_WORDS,
  ...DOING_SCREEN_WORDS,
  ...DROP_WORDS,
  ...DUE_WORDS,
  ...FAULT_WORDS,
  ...FOLLOW_UP_SCREEN_WORDS,
  ...FORM_WORDS,
  ...HANDOVER_WORDS,
  ...IMPORT_SCREEN_WORDS,
  ...INTAKE_LEAF_WORDS,
  ...JOB_SHEET_WORDS,
  ...KEYS_WORDS,
  ...LEDGER_WORDS,
  ...PACK_WORDS,
  ...PAPERS_WORDS,
  ...PARTS_FORM_WORDS,
  ...PARTS_WORDS,
  ...PLANNING_WORDS,
  ...PLAN_SCREEN_WORDS,
  ...PRICES_WORDS,
  ...RECORD_WORDS,
  ...EARLIER_WORDS,
  ...REDACT_WORDS,
  ...SEARCH_SCREEN_WORDS,
  ...SERVICES_WORDS,
  ...SETTINGS_WORDS,
  ...SET_WORDS,
  ...SHEET_EDITOR_WORDS,
  ...TOUR_WORDS,
  ...WEAR_WORDS,
  ...YARD_WORDS,
};

/** The name of something the screens say. */
export type WordKey = keyof typeof SCREEN_WORDS;
export type WordValues = Readonly<Record<string, string | number>>;

const IN_LOCALE = phrasesOf(SCREEN_WORDS);

/**
 * What the screens say under a key in the locale that is spoken, filled with values; a value `n` chooses between one and more.
 *
 * @example tell('late.months', { n: 12 }) //=> '12 months late'
 */
export function tell(key: WordKey, values: WordValues = {}): string {
  const phrase: Phrase = IN_LOCALE(spokenLocale())[key] ?? SCREEN_WORDS[key];
  return fillPlaces(formFor(phrase, values['n']), (name) => {
    const value = values[name] ?? '';
    return typeof value === 'number' ? sayNumber(value) : value;
  });
}

/** Whether there is something to say under a key that is made of parts. */
export function isWordKey(key: string): key is WordKey {
  return Object.hasOwn(SCREEN_WORDS, key);
}
