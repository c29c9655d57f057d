import { dialog, type App, type BrowserWindow } from 'electron';
import { z } from 'zod';
import { ownFolder } from '../cli/command-host.ts';
import type { ReadOptions } from '../start/start-options.ts';
import { bringToFront } from './open-window.ts';
import { samePlace } from './same-place.ts';
import { windowWords } from './window-words.ts';

/** What a second start tells the program that runs already: the household that it was asked for by name, or why it was not understood. */
const askedSchema = z.strictObject({ household: z.string().max(4096).nullable(), why: z.string().max(1000).nullable() });
export type Asked = z.infer<typeof askedSchema>;

/** What this start asks for: a household only where one is named, for a plain start takes the one that is open. */
export function askedAtStart(options: ReadOptions): Asked {
  if (!options.ok) return { household: null, why: options.why };
  const named = process.env['TRUNNION_HOUSEHOLD'] ?? '';
  return { household: options.value.household ?? (named === '' ? null : ownFolder()), why: null };
}

/** The program that runs already. */
export interface RunningProgram {
  /** Its window; null while there is none yet. */
  readonly window: () => BrowserWindow | null;
  /** The household that is open; null while none is. */
  readonly home: () => string | null;
  /** Starts it again, once it has ended, for a household. */
  readonly startAgain: (folder: string) => void;
}

/**
 * A second start brings the window to the front; one that asked for another household is told which one
 * is open, and how to change. Where the window is closed and the program still ends, it starts again: nobody would see that it was asked.
 */
export function hearSecondStart(app: App, program: RunningProgram): void {
  app.on('second-instance', (_event, _words, _folder, data) => {
    const window = program.window();
    bringToFront(window);
    const home = program.home();
    const asked = askedSchema.safeParse(data);
    if (window === null || home === null) return;
    if (window.isDestroyed()) program.startAgain((asked.success ? asked.data.household : null) ?? home);
    else if (asked.success) tell(window, home, asked.data);
  });
}

function tell(window: BrowserWindow, home: string, { household, why }: Asked): void {
  const buttons = { buttons: [windowWords('box-fine')], noLink: true };
  if (why !== null) void dialog.showMessageBox(window, { type: 'warning', message: windowWords('second-not-understood'), detail: why, ...buttons });
  else if (household !== null && !samePlace(household, home)) {
    void dialog.showMessageBox(window, { type: 'info', message: windowWords('second-other'), detail: windowWords('second-other-do', { open: home, wanted: household }), ...buttons });
  }
}
