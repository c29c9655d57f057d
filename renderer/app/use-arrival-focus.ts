import { useEffect, useRef, type RefObject } from 'react';
import { useLocation } from 'wouter';

/** The beginning of an address names a screen, what follows is a place in it; but taking in a table for a car, a task's sheet, and what is done with a session are screens of their own. */
const screenOf = (location: string) => (/\/import$|^\/car\/[^/]+\/sheet\/|^\/sessions\/[^/]+\//.test(location) ? location : location.split('/').slice(0, 3).join('/'));

/** A place that the screen itself has put the focus on, the step in hand, or the name of the car one has just chosen. */
function staysWhereItIs(main: HTMLElement | null): boolean {
  const active = document.activeElement;
  return main?.contains(active) === true && active?.closest('nav, [data-place], [data-ticked]') != null;
}

/** Moves the focus to a screen's heading when one goes to it, unless the screen itself has put it on a place within. */
export function useArrivalFocus(main: RefObject<HTMLElement | null>): void {
  const [location] = useLocation();
  const before = useRef(screenOf(location));
  useEffect(() => {
    if (before.current === screenOf(location)) return;
    before.current = screenOf(location);
    if (staysWhereItIs(main.current)) return;
    window.scrollTo(0, 0);
    main.current?.querySelector('h1')?.focus({ preventScroll: true });
  }, [location, main]);
}
