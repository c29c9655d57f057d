const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** One request may arrive several times: from a terminal that closes, from its shell, and from what started the program and passes it on. */
const ECHO_MS = 500;

/** Resolves when the person (Ctrl-C) or the system asks the program to stop. A second request, once the first has died away, then ends it at once. */
export function untilStopped(): Promise<void> {
  return new Promise((resolve) => {
    const stop = (): void => {
      resolve();
      setTimeout(() => SIGNALS.forEach((signal) => process.off(signal, stop)), ECHO_MS).unref();
    };
    for (const signal of SIGNALS) process.on(signal, stop);
  });
}
