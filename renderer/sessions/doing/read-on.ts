/** How much of the window one press reads on, so that the last line stays to be seen. */
const SHARE_OF_WINDOW = 0.6;

/** Brings a card to its top, where it does not stand in the window whole. */
export function toItsTop(card: HTMLElement | null): void {
  if (card === null) return;
  const { top, bottom } = card.getBoundingClientRect();
  if (top < 0 || bottom > window.innerHeight) card.scrollIntoView({ block: 'start' });
}

/** Reads on in what does not fit into the window, and says whether there was more to read: nothing is ticked whose words were never to be seen. */
export function readOn(words: HTMLElement | null): boolean {
  if (words === null) return false;
  const { top, bottom } = words.getBoundingClientRect();
  const below = bottom - window.innerHeight;
  if (below <= 1 && bottom > 0) return false;
  window.scrollBy({ top: bottom <= 0 ? top : Math.min(below + 16, window.innerHeight * SHARE_OF_WINDOW), behavior: 'instant' });
  return true;
}
