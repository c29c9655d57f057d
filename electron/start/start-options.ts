import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { localDate, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import { sayRefusal } from '../../shared-core/result/words/say.ts';

/** What a person may say to `npm start --`. */
export interface StartOptions {
  /** The browser at once, no window. */
  readonly browser: boolean;
  /** A window, even where its program could not be fetched a short time ago. */
  readonly window: boolean;
  /** The household's folder; the program's own unless given. */
  readonly household: string | null;
  /** The day that counts as today; the machine's own unless given. */
  readonly on: LocalDate | null;
  readonly help: boolean;
}

export type ReadOptions = { readonly ok: true; readonly value: StartOptions } | { readonly ok: false; readonly why: string };

export const START_HELP = `npm start [-- options]

  --browser          serve the dashboard for a browser, without trying a window
  --window           try a window again, even if its program could not be fetched lately
  --household DIR    the household's folder (else the program's own)
  --on YYYY-MM-DD    show and work as if it were that day (else today)
  --help             this text
`;

const OPTIONS = { browser: { type: 'boolean' }, window: { type: 'boolean' }, household: { type: 'string' }, on: { type: 'string' }, help: { type: 'boolean', short: 'h' } } as const;

/** Reads the words after `npm start --`; `why` says in one sentence what is wrong with them. */
export function readStartOptions(words: readonly string[]): ReadOptions {
  try {
    return optionsOf(parseArgs({ args: [...words], options: OPTIONS, allowPositionals: false }).values);
  } catch (error) {
    return { ok: false, why: error instanceof Error ? (error.message.split('. ')[0] ?? error.message) : String(error) };
  }
}

/** Reads the words that a window was started with. Words that are not ours are Chromium's and the system's own, and are left to them. */
export function readWindowOptions(words: readonly string[]): ReadOptions {
  const { values } = parseArgs({ args: [...words], options: OPTIONS, strict: false });
  if (values.household === true || values.household === '') return { ok: false, why: 'After --household comes a folder.' };
  return optionsOf(values);
}

type Given = { readonly [Name in keyof typeof OPTIONS]?: string | boolean | undefined };

function optionsOf({ browser, window, household, on, help }: Given): ReadOptions {
  const day = on === undefined ? null : localDate(on === true ? '' : String(on));
  if (day?.ok === false) return { ok: false, why: sayRefusal(day.refusal) };
  const folder = typeof household === 'string' ? resolve(process.env['INIT_CWD'] ?? '', household) : null;
  return { ok: true, value: { browser: browser === true, window: window === true, household: folder, on: day?.value ?? null, help: help === true } };
}
