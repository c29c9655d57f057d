import { useSyncExternalStore } from 'react';

/** What was just done, and how to undo it. It stays until the next one, or until it is closed: nobody has to hurry. */
export interface Notice {
  readonly id: number;
  readonly text: string;
  /** Entry numbers that undo it; empty where it cannot be undone. */
  readonly undo: readonly number[];
}

let current: Notice | null = null;
let last = 0;
const listeners = new Set<() => void>();

/** Says what was just done. */
export function note(text: string, undo: readonly number[] = []): void {
  last += 1;
  show({ id: last, text, undo });
}

/** Takes the note away. */
export function closeNote(): void {
  show(null);
}

/** The note that stands now. */
export function useNote(): Notice | null {
  return useSyncExternalStore(listen, () => current);
}

function show(notice: Notice | null): void {
  current = notice;
  listeners.forEach((listener) => listener());
}

function listen(listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}
