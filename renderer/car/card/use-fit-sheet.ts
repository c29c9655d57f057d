import { useEffect, type RefObject } from 'react';
import type { CardView } from '../../../shared-core/views/card-view.ts';

/** Sizes of type in points, the largest that fits is taken. Below 9 points nothing is read at arm's length with ease. */
const SIZES = [12, 11.5, 11, 10.5, 10, 9.5, 9, 8.5, 8, 7.5, 7, 6.5];
/** Lines to fill in by hand never make the rest smaller than this. */
const LEAST_WITH_BLANKS = 9.5;

/**
 * Sets a printed card in the largest type in which it fits its page, and shows as many lines to fill in by hand as there is
 * room for. Tells whether it fits at all. Measures anew once the fonts have come.
 */
export function useFitSheet(page: RefObject<HTMLDivElement | null>, card: CardView, onFit: (fits: boolean) => void): void {
  useEffect(() => {
    let here = true;
    const fit = () => {
      if (here && page.current !== null) onFit(fitSheet(page.current));
    };
    fit();
    void document.fonts.ready.then(fit);
    return () => {
      here = false;
    };
  }, [page, card, onFit]);
}

/** @returns whether it fits in the smallest size */
function fitSheet(page: HTMLElement): boolean {
  const blanks = [...page.querySelectorAll<HTMLElement>('[data-blank]')];
  const withBlanks = SIZES.find((size) => size >= LEAST_WITH_BLANKS && fits(page, blanks, size, blanks.length));
  if (withBlanks !== undefined) return true;
  const size = SIZES.find((one) => fits(page, blanks, one, 0));
  if (size === undefined) return false;
  let shown = 0;
  while (shown < blanks.length && fits(page, blanks, size, shown + 1)) shown += 1;
  fits(page, blanks, size, shown);
  return true;
}

/** Sets it so, and measures: the page is as high as both A4 and Letter have room for. */
function fits(page: HTMLElement, blanks: readonly HTMLElement[], size: number, shown: number): boolean {
  page.style.fontSize = `${size}pt`;
  blanks.forEach((blank, at) => (blank.hidden = at >= shown));
  const all = page.querySelector<HTMLElement>('[data-blanks]');
  if (all !== null) all.hidden = shown === 0;
  const whole = page.querySelector<HTMLElement>('[data-whole]');
  return whole !== null && whole.offsetHeight <= page.clientHeight && whole.scrollWidth <= page.clientWidth + 1;
}
