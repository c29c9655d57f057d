import type { BrowserWindow } from 'electron';
import type { ComposedHost } from '../host/compose-host.ts';
import { stopJobs } from '../host/running-jobs.ts';
import type { ServedWindows } from '../host/serve-contract.ts';

/** What the running program holds, each null until it is there. */
export interface Program {
  host: ComposedHost | null;
  served: ServedWindows | null;
  window: BrowserWindow | null;
  stopReminding: (() => void) | null;
}

export function emptyProgram(): Program {
  return { host: null, served: null, window: null, stopReminding: null };
}

/** Ends the work in order: long work is asked to stop, what was asked is answered, then the household is closed. */
export async function letGo({ host, served, stopReminding }: Program): Promise<void> {
  stopReminding?.();
  if (host !== null) stopJobs(host.context);
  await served?.close();
  await host?.close();
}
