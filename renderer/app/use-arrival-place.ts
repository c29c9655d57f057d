import { useEffect } from 'react';
import { useLocation } from 'wouter';
import { useSought } from '../ui/sought.ts';

/** As long as a screen may take to show a place; after that nobody expects to be moved any more. */
const LONGEST_WAIT = 10_000;

/** Moves the focus to the place that the address names, as soon as the screen shows it; whoever does something else meanwhile stays where they are. */
export function useArrivalPlace(): void {
  const [location] = useLocation();
  const sought = useSought();
  useEffect(() => (sought === null ? undefined : whenShown(sought)), [location, sought]);
}

/** Gives the focus to a place on the screen. Answers whether it is there. */
export function goToPlace(id: string): boolean {
  const place = document.getElementById(id);
  if (place === null) return false;
  place.dataset['arrived'] = '';
  place.addEventListener('blur', () => delete place.dataset['arrived'], { once: true });
  place.scrollIntoView({ block: 'center' });
  place.focus({ preventScroll: true });
  return true;
}

/** Waits until a place is on the screen, and goes there; answers how to stop waiting. */
function whenShown(id: string): () => void {
  const stop = () => {
    watch.disconnect();
    clearTimeout(late);
    cancelAnimationFrame(frame);
    for (const kind of ['pointerdown', 'keydown']) window.removeEventListener(kind, stop, true);
  };
  const watch = new MutationObserver(() => {
    if (goToPlace(id)) stop();
  });
  const late = setTimeout(stop, LONGEST_WAIT);
  // After whatever else takes the focus as a screen comes.
  const frame = requestAnimationFrame(() => {
    if (goToPlace(id)) return stop();
    watch.observe(document.body, { childList: true, subtree: true });
    for (const kind of ['pointerdown', 'keydown']) window.addEventListener(kind, stop, true);
  });
  return stop;
}
