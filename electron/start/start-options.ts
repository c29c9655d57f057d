import { resolve } from 'node:path';
import { parseArgs } from 'node:util';

/** What a person may say to `npm start --`. */
export interface StartOptions {
  /** The browser at once, no window. */
  readonly browser: boolean;
  /** A window, even where its program could not be fetched a short time ago. */
  readonly window: boolean;
  /** The household's folder; the program's own unless given. */
  readonly household: string | null;
  readonly help: boolean;
}

export const START_HELP = `npm start [-- options]

  --browser          serve the dashboard for a browser, without trying a window
  --window           try a window again, even if its program could not be fetched lately
  --household DIR    the household's folder (else the program's own)
  --help             this text
`;

/** Reads the words after `npm start --`; `why` says what is wrong with them. */
export function readStartOptions(words: readonly string[]): { readonly ok: true; readonly value: StartOptions } | { readonly ok: false; readonly why: string } {
  const options = { browser: { type: 'boolean' }, window: { type: 'boolean' }, household: { type: 'string' }, help: { type: 'boolean', short: 'h' } } as const;
  try {
    const { values } = parseArgs({ args: [...words], options, allowPositionals: false });
    const household = values.household === undefined ? null : resolve(process.env['INIT_CWD'] ?? '', values.household);
    return { ok: true, value: { browser: values.browser === true, window: values.window === true, household, help: values.help === true } };
  } catch (error) {
    return { ok: false, why: error instanceof Error ? (error.message.split('. ')[0] ?? error.message) : String(error) };
  }
}
