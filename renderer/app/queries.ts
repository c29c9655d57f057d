import { QueryClient } from '@tanstack/react-query';
import type { PagePush } from '../bridge/pushes.ts';

/**
 * The answers already asked for, by the operation's name and request. They hold until the host says that something
 * changed: the host is on the same machine and tells of every change, so nothing is asked again on a timer or a focus.
 */
export const queries = new QueryClient({
  defaultOptions: {
    queries: { staleTime: Infinity, retry: false, refetchOnWindowFocus: false, refetchOnReconnect: false, networkMode: 'always' },
    mutations: { retry: false, networkMode: 'always' },
  },
});

/** Asks again for what is on screen once something has changed, or may have while the host could not be heard. */
export function dropWhatChanged(push: PagePush): void {
  if (push.kind === 'changed' || push.kind === 'heard-again') void queries.invalidateQueries();
}
