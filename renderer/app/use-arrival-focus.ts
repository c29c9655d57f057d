import { useEffect, useRef, type RefObject } from 'react';
import { useLocation } from 'wouter';

/** Only the first word of an address names a screen; what follows is a place in it. */
const screenOf = (location: string) => location.split('/').slice(0, 3).join('/');

/** Moves the focus to a screen's heading when one goes to it, unless the screen itself has put it on a place within. */
export function useArrivalFocus(main: RefObject<HTMLElement | null>): void {
  const [location] = useLocation();
  const before = useRef(screenOf(location));
  useEffect(() => {
    if (before.current === screenOf(location)) return;
    before.current = screenOf(location);
    if (main.current?.contains(document.activeElement) === true && document.activeElement !== main.current) return;
    window.scrollTo(0, 0);
    main.current?.querySelector('h1')?.focus({ preventScroll: true });
  }, [location, main]);
}
