/** Resolves when the person (Ctrl-C) or the system asks the program to stop. A second request then ends it at once. */
export function untilStopped(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => resolve());
  });
}
