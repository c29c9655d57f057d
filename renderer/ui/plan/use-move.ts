import { useMemo, useState, useSyncExternalStore } from 'react';
import type { Result } from '../../../shared-core/result/result.ts';
import { call } from '../../bridge/call.ts';
import { change } from '../change.ts';
import { moveStore, type KeptMove, type MoveHost, type MoveStore, type TriedMove } from './move-store.ts';

/** What is being moved now, and the ways to move it. */
export interface MoveControl extends Pick<MoveStore, 'lift' | 'place' | 'putBack' | 'keep'> {
  readonly move: TriedMove | null;
}

const HOST: MoveHost = {
  tryOut: ({ tasks }, to) => call('plan.try', { tasks, to }) as ReturnType<MoveHost['tryOut']>,
  keep: ({ session, part, tasks }, to): Promise<Result<KeptMove>> => {
    if (session === null) return change('session.keep', { sessions: [{ ...to, tasks }] });
    return change('session.move', { session, ...to, ...(part ? { tasks } : {}) });
  },
};

/** Moves something by hand on one screen. */
export function useMove(): MoveControl {
  const [store] = useState(() => moveStore(HOST));
  const move = useSyncExternalStore(store.listen, store.now);
  return useMemo(() => ({ move, lift: store.lift, place: store.place, putBack: store.putBack, keep: store.keep }), [move, store]);
}
