import type { Store } from '../store/store.ts';
import type { HostContext } from './host-context.ts';
import { pushAllChanged } from './push-changed.ts';

const EVERY_MILLISECONDS = 1000;

/** Tells the windows when another program has written to the same household. Answers how to stop. */
export function watchOtherWriters(context: HostContext): () => void {
  let seen = { store: context.household().store, version: versionOf(context.household().store) };
  const timer = setInterval(() => {
    const { store } = context.household();
    if (!store.open) return;
    const now = { store, version: versionOf(store) };
    if (now.version === null) return;
    if (now.store === seen.store && now.version !== seen.version) pushAllChanged(context);
    seen = now;
  }, EVERY_MILLISECONDS);
  timer.unref();
  return () => clearInterval(timer);
}

/** Changes when another connection has written; null where the database does not answer now: the next look will tell. */
function versionOf(store: Store): number | null {
  try {
    return store.pragma('data_version', { simple: true }) as number;
  } catch {
    return null;
  }
}
