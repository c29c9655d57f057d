import { useSyncExternalStore } from 'react';

/** The step of the look around that is shown, from 0; null: none. Kept in the page alone: nobody is asked twice whether they know their way. */
let current: number | null = null;
const listeners = new Set<() => void>();

/** Begins the look around, goes to a step of it, or ends it. */
export function showTour(step: number | null): void {
  current = step;
  listeners.forEach((listener) => listener());
}

/** The step that is shown now. */
export function useTour(): number | null {
  return useSyncExternalStore(listen, () => current);
}

function listen(listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}
