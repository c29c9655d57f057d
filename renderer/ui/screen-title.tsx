import { useEffect } from 'react';
import { tell } from './words/tell.ts';

/** A screen's heading: it names the window too, and takes the focus when one comes to the screen. */
export function ScreenTitle({ children }: { readonly children: string }) {
  useEffect(() => {
    document.title = `${children} · ${tell('app.name')}`;
  }, [children]);
  return <h1 tabIndex={-1}>{children}</h1>;
}
