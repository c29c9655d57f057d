import type { HostContext } from './host-context.ts';
import { pushAllChanged } from './push-changed.ts';

const EVERY_MILLISECONDS = 1000;

/** Tells the windows when another program has written to the same household. Answers how to stop. */
export function watchOtherWriters(context: HostContext): () => void {
  const version = () => context.household().store.pragma('data_version', { simple: true }) as number;
  let seen = { store: context.household().store, version: version() };
  const timer = setInterval(() => {
    const { store } = context.household();
    if (!store.open) return;
    const now = { store, version: version() };
    if (now.store === seen.store && now.version !== seen.version) pushAllChanged(context);
    seen = now;
  }, EVERY_MILLISECONDS);
  timer.unref();
  return () => clearInterval(timer);
}
