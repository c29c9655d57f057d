import type { App } from 'electron';

/** Longer than this nobody waits for a program to end; what was confirmed is on the disk at any time. */
const LIMIT_MS = 10_000;

/** Ends the program in order. */
export interface Quitting {
  /** Closes the windows, which may ask about what was typed, then all else, then does `last`, then ends. */
  quit(last?: () => void): void;
  /** Does this last where the program is ending and nothing else was to be done last. */
  atLast(then: () => void): void;
  /** The person chose to stay: what was to be done last is not done at a later quitting. */
  stay(): void;
  /** Closes all but the windows, and ends with this status: for a fault after which nothing can be asked. */
  endWith(status: number): Promise<void>;
}

/**
 * Makes the program's end wait: once the windows are gone, `close` runs to its end or to the limit, and only then the program goes.
 * A second quitting meanwhile changes nothing.
 */
export function quitInOrder(app: App, close: () => Promise<void>, onFault: (error: unknown) => void): Quitting {
  let last: (() => void) | null = null;
  let ending: Promise<void> | null = null;
  const end = (status: number): Promise<void> => {
    ending ??= withinLimit(close(), onFault).then(() => {
      if (status === 0) last?.();
      app.exit(status);
    });
    return ending;
  };
  app.on('will-quit', (event) => {
    event.preventDefault();
    void end(0);
  });
  return {
    quit: (then) => {
      last = then ?? null;
      app.quit();
    },
    atLast: (then) => void (last ??= then),
    stay: () => void (last = null),
    endWith: end,
  };
}

async function withinLimit(work: Promise<void>, onFault: (error: unknown) => void): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const limit = new Promise<void>((resolve) => (timer = setTimeout(resolve, LIMIT_MS)));
  await Promise.race([work.catch(onFault), limit]);
  clearTimeout(timer);
}
