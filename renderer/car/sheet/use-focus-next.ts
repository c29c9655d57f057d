import { useEffect, useRef, useState } from 'react';

/** Gives the focus to an element by its id as soon as it is on the screen, after what was pressed has gone or moved. */
export function useFocusNext(): (id: string) => void {
  const wish = useRef<string | null>(null);
  const [, setAsked] = useState(0);
  useEffect(() => {
    const element = wish.current === null ? null : document.getElementById(wish.current);
    if (element === null) return;
    wish.current = null;
    element.focus();
    // Clear of the line of buttons at the foot.
    element.scrollIntoView({ block: 'nearest' });
  });
  return (id) => {
    wish.current = id;
    // What changes may be a part of the page alone: this looks again in any case.
    setAsked((times) => times + 1);
  };
}
