import { useEffect, useState } from 'react';
import { useLocation } from 'wouter';

/** What holds the browser's way back; null: nothing. */
let holdBack: ((event: PopStateEvent) => void) | null = null;

// A window calls its listeners in the order in which they came, and the router's takes the page away at once: this one stands before it.
window.addEventListener('popstate', (event) => holdBack?.(event));

/** A way off the page that waits for an answer. */
export interface Leaving {
  /** Where it goes; null: nowhere is being left. */
  readonly to: string | null;
  readonly go: () => void;
  readonly stay: () => void;
}

/**
 * Asks before what is typed is left: by a link, by the browser's way back, or by closing the window (where the browser asks in its own
 * words). Nothing is asked while `holds` is false.
 */
export function useLeaveGuard(holds: boolean): Leaving {
  const [location, navigate] = useLocation();
  const [to, setTo] = useState<string | null>(null);
  useEffect(() => {
    if (!holds) return;
    const here = window.location.pathname + window.location.search;
    const onUnload = (event: BeforeUnloadEvent) => event.preventDefault();
    const onClick = (event: MouseEvent) => {
      const link = event.target instanceof Element ? event.target.closest('a[href]') : null;
      if (!(link instanceof HTMLAnchorElement) || link.target === '_blank' || event.ctrlKey || event.metaKey || event.shiftKey) return;
      const url = new URL(link.href);
      if (url.origin !== window.location.origin || url.pathname === window.location.pathname) return;
      event.preventDefault();
      event.stopPropagation();
      setTo(url.pathname + url.search);
    };
    // The browser has gone already: it is put back where it was, before the page hears of it.
    const onBack = (event: PopStateEvent) => {
      event.stopImmediatePropagation();
      const wanted = window.location.pathname + window.location.search;
      history.pushState(null, '', here);
      setTo(wanted);
    };
    window.addEventListener('beforeunload', onUnload);
    document.addEventListener('click', onClick, true);
    holdBack = onBack;
    return () => {
      window.removeEventListener('beforeunload', onUnload);
      document.removeEventListener('click', onClick, true);
      holdBack = null;
    };
  }, [holds, location]);
  return {
    to,
    go: () => {
      if (to !== null) navigate(to);
      setTo(null);
    },
    stay: () => setTo(null),
  };
}
