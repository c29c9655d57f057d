import type { App } from 'electron';

/**
 * The words to start the program with again, for another household; what else it was started with is kept.
 *
 * @example wordsForHousehold(['.', '--household', 'a', '--on=2026-11-25'], '/b') //=> ['.', '--on=2026-11-25', '--household=/b']
 */
export function wordsForHousehold(words: readonly string[], folder: string): string[] {
  const kept = words.filter((word, at) => word !== '--household' && !word.startsWith('--household=') && words[at - 1] !== '--household');
  return [...kept, `--household=${folder}`];
}

/** Starts the program again once it has ended. An AppImage lies in a place that is gone by then, so its own file is started. */
export function relaunchFor(app: App, folder: string): void {
  const image = process.env['APPIMAGE'];
  const execPath = app.isPackaged && image !== undefined && image !== '' ? { execPath: image } : {};
  app.relaunch({ args: wordsForHousehold(process.argv.slice(1), folder), ...execPath });
}
