import type { Store } from './store.ts';

/** From here on commits do not wait for the disk. Only for a folder that is thrown away if it is cut short. */
export function withoutSync(store: Store): void {
  store.pragma('synchronous = OFF');
}

/** Puts everything written so far on disk, and lets every later commit wait for it again. */
export function syncAtLast(store: Store): void {
  store.pragma('synchronous = FULL');
  store.pragma('wal_checkpoint(TRUNCATE)');
}
