import type { StopSignal } from '../../shared-core/integer-program/solver.ts';

/** A wish to stop that can be thrown once; whoever listens is told then. */
export interface StopSwitch extends StopSignal {
  throw(): void;
}

/** Makes a switch; `also` says whether something else has asked to stop already. */
export function stopSwitch(also: () => boolean = () => false): StopSwitch {
  const listeners = new Set<() => void>();
  let thrown = false;
  return {
    get stopped() {
      return thrown || also();
    },
    onStop: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    throw: () => {
      thrown = true;
      for (const listener of [...listeners]) listener();
    },
  };
}
