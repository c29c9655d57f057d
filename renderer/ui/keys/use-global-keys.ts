import { useEffect, useEffectEvent } from 'react';
import { useLocation } from 'wouter';
import { KEYS_KEY, SCREEN_ADDRESSES, SEARCH_KEY } from './keys.ts';
import { loneKeysOn } from './lone-keys.ts';

interface GlobalKeys {
  readonly onSearch: () => void;
  readonly onKeys: () => void;
}

/** The keys that work on every screen: to the search, to the sheet of keys, and to each screen by its figure. */
export function useGlobalKeys({ onSearch, onKeys }: GlobalKeys): void {
  const [, go] = useLocation();
  const press = useEffectEvent((event: KeyboardEvent) => {
    if (event.defaultPrevented || event.isComposing || event.repeat || event.ctrlKey || event.metaKey || event.altKey || !loneKeysOn() || isTaken(event.target)) return;
    const screen = /^[1-8]$/.test(event.key) ? SCREEN_ADDRESSES[Number(event.key) - 1] : undefined;
    const act = event.key === SEARCH_KEY ? onSearch : event.key === KEYS_KEY ? onKeys : screen === undefined ? null : () => go(screen);
    if (act === null) return;
    event.preventDefault();
    act();
  });
  useEffect(() => {
    const listen = (event: KeyboardEvent) => press(event);
    document.addEventListener('keydown', listen);
    return () => document.removeEventListener('keydown', listen);
  }, []);
}

/** While somebody types or chooses, or answers what lies over the screen, a character means itself. */
function isTaken(target: EventTarget | null): boolean {
  const types = target instanceof HTMLElement && (target.isContentEditable || target.closest('input:not([type=checkbox], [type=radio], [type=button], [type=submit]), textarea, select') !== null);
  return types || document.querySelector('[role=dialog]') !== null;
}
