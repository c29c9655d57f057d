import type { Push } from '../../shared-core/contract/push.ts';
import { door } from './call.ts';

/** What the host tells, and that it is heard again after a silence in which something may have been missed. */
export type PagePush = Push | { readonly kind: 'heard-again' };

/** Hears every push from now on. The answer stops it. */
export function onPush(listener: (push: PagePush) => void): () => void {
  return door.onPush(listener, () => listener({ kind: 'heard-again' }));
}
