import { QueryClient, type QueryFilters, type QueryKey } from '@tanstack/react-query';
import type { Result } from '../../shared-core/result/result.ts';
import type { CarView } from '../../shared-core/views/car-view.ts';
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
  if (push.kind === 'heard-again') askAgain({});
  if (push.kind === 'changed') askAgain({ predicate: ({ queryKey, state }) => mayHaveChanged(queryKey, state.data, push.cars) });
}

/** An answer still on its way may be older than the change, and the cache would take it as fresh: it is dropped, and asked for anew. */
function askAgain(which: QueryFilters): void {
  void queries.cancelQueries(which).then(() => queries.invalidateQueries(which));
}

/**
 * Whether an answer may no longer hold. An answer about one car stands while only other cars changed; a change that names
 * no car is one of the household, and nothing stands.
 *
 * @example mayHaveChanged(['car.show', { car: 'pip' }], { ok: true, value: { car: { id: 'pip' } } }, ['alder']) //=> false
 */
export function mayHaveChanged([name]: QueryKey, answer: unknown, cars: readonly string[]): boolean {
  if (cars.length === 0 || name !== 'car.show') return true;
  const shown = answer as Result<CarView> | undefined;
  return shown?.ok !== true || cars.includes(shown.value.car.id);
}
