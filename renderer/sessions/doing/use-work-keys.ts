import { useEffect, useRef } from 'react';
import { loneKeysOn } from '../../ui/keys/lone-keys.ts';

interface WorkKeys {
  readonly onTick: () => void;
  readonly onBack: () => void;
  readonly onNext: () => void;
  /** While something is typed or chosen, keys mean what they always mean. */
  readonly held: boolean;
}

/** The space bar ticks, the arrows go back and on, wherever the focus is but in a field or on a button. */
export function useWorkKeys(keys: WorkKeys): void {
  const now = useRef(keys);
  useEffect(() => {
    now.current = keys;
  });
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const { held, onTick, onBack, onNext } = now.current;
      const does = { ' ': onTick, ArrowLeft: onBack, ArrowRight: onNext }[event.key];
      if (does === undefined || (event.key === ' ' && !loneKeysOn()) || held || event.repeat || event.altKey || event.ctrlKey || event.metaKey || isOwn(event.target, event.key)) return;
      event.preventDefault();
      does();
    };
    document.addEventListener('keydown', press);
    return () => document.removeEventListener('keydown', press);
  }, []);
}

/** What takes the key itself: fields take all, buttons and links the space bar. */
function isOwn(target: EventTarget | null, key: string): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return target.closest(key === ' ' ? 'input, select, textarea, button, a, summary' : 'input, select, textarea') !== null;
}
