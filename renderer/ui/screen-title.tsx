import { useEffect, useLayoutEffect, useRef } from 'react';
import { tell } from './words/tell.ts';

/** Whether a heading had the focus as it went: the one that takes its place, once the host has answered, gets it. */
let focusToPassOn = false;

/** Gives the focus to the screen's heading; where it is still to come, as soon as it is there. */
export function focusHeading(options?: FocusOptions): void {
  const heading = document.querySelector<HTMLElement>('h1[tabindex]');
  heading?.focus(options);
  focusToPassOn = heading === null;
}

/** A screen's heading: it names the window too, and takes the focus when one comes to the screen. */
export function ScreenTitle({ children }: { readonly children: string }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${children} · ${tell('app.name')}`;
  }, [children]);
  useLayoutEffect(() => {
    const own = heading.current;
    if (focusToPassOn) own?.focus({ preventScroll: true });
    focusToPassOn = false;
    return () => {
      focusToPassOn = own !== null && document.activeElement === own;
    };
  }, []);
  return <h1 ref={heading} tabIndex={-1}>{children}</h1>;
}
