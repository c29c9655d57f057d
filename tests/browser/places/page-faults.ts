/** What these look for runs within the page: each stands alone. */

/** One heading of the first level, and none that skips one (1.3.1; common practice). */
export function headingFaults(): string[] {
  const shown = [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].filter((one) => one.getClientRects().length > 0 && one.closest('[role=dialog]') === null);
  const first = shown.filter((one) => one.tagName === 'H1').length;
  const skipped = shown.filter((one, at) => at > 0 && Number(one.tagName[1]) > Number(shown[at - 1]?.tagName[1]) + 1);
  return [...(first === 1 ? [] : [`${first} headings of the first level`]), ...skipped.map((one) => `the heading "${one.textContent}" skips a level`)];
}

/**
 * 2.5.8 (seen): targets of less than 24 pixels, round whose middle a circle of 24 pixels meets another target or the circle of another small
 * one. Links within a sentence are excepted, and what is never drawn.
 */
export function smallTargets(): string[] {
  const LEAST = 24;
  const within = document.querySelector('[role=dialog]') ?? document;
  const inSentence = (one: Element) => one.tagName === 'A' && getComputedStyle(one).display === 'inline';
  const targets = [...within.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary, [role=button], [tabindex="0"]')]
    .filter((one) => one.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && !one.matches(':disabled, [type=hidden]') && !one.classList.contains('only-said') && !inSentence(one))
    // A box to tick or choose is pressed by its words as well; a label is pressed in place of what it names.
    .map((one) => ({ one, boxes: [one, ...((one as HTMLInputElement).labels ?? [])].map((part) => part.getBoundingClientRect()).filter(({ width, height }) => width > 1 && height > 1) }))
    .filter(({ boxes }) => boxes.length > 0);
  // What stays in its place while the rest is scrolled beneath it is beside nothing for good.
  const stays = (one: Element | null): Element | null => (one === null || ['sticky', 'fixed'].includes(getComputedStyle(one).position) ? one : stays(one.parentElement));
  // What a list of its own scrolls out of sight can be pressed only once it is scrolled in.
  const cut = (box: DOMRect, above: Element | null): boolean => {
    if (above === null || above === document.body) return false;
    const frame = above.getBoundingClientRect();
    return (getComputedStyle(above).overflowY !== 'visible' && (box.top < frame.top || box.bottom > frame.bottom)) || cut(box, above.parentElement);
  };
  const large = (boxes: readonly DOMRect[]) => boxes.some(({ width, height }) => width >= LEAST - 0.01 && height >= LEAST - 0.01);
  const middle = ({ left, top, width, height }: DOMRect) => ({ x: left + width / 2, y: top + height / 2 });
  const meets = (box: DOMRect, other: { readonly boxes: readonly DOMRect[] }) => {
    const { x, y } = middle(box);
    if (large(other.boxes)) return other.boxes.some(({ left, right, top, bottom }) => Math.hypot(x - Math.min(Math.max(x, left), right), y - Math.min(Math.max(y, top), bottom)) < LEAST / 2 - 0.01);
    return other.boxes.some((one) => Math.hypot(x - middle(one).x, y - middle(one).y) < LEAST - 0.01);
  };
  return targets
    .filter(({ one, boxes }) => !large(boxes) && !boxes.some((box) => cut(box, one.parentElement)))
    .flatMap((small) => {
      const box = small.boxes[0];
      const near = box === undefined ? undefined : targets.find((other) => other !== small && !other.one.contains(small.one) && !small.one.contains(other.one) && stays(other.one) === stays(small.one) && !other.boxes.some((one) => cut(one, other.one.parentElement)) && meets(box, other));
      return near === undefined || box === undefined ? [] : [`"${(small.one.getAttribute('aria-label') ?? small.one.textContent ?? '').slice(0, 50)}" is ${Math.round(box.width)} by ${Math.round(box.height)} pixels, and "${(near.one.getAttribute('aria-label') ?? near.one.textContent ?? '').slice(0, 50)}" is too near`];
    });
}

/** 2.4.11 (seen): what has the focus and is wholly covered by something else; looked at in five points, and again once a note of what had it before is gone. */
export async function coveredFocus(): Promise<string[]> {
  const NOTE_GONE_MS = 400;
  const within = document.querySelector('[role=dialog]') ?? document;
  const all = [...within.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary, [tabindex="0"]')].filter((one) => one.tabIndex >= 0 && !one.matches(':disabled') && one.checkVisibility({ visibilityProperty: true }));
  const covered = (one: HTMLElement) => {
    const { left, right, top, bottom } = one.getBoundingClientRect();
    const [x, y] = [(left + right) / 2, (top + bottom) / 2];
    return [[x, y], [left + 2, y], [right - 2, y], [x, top + 2], [x, bottom - 2]].every(([across = 0, down = 0]) => {
      const seen = document.elementFromPoint(across, down);
      return seen === null || !(one.contains(seen) || seen.contains(one) || [...((one as HTMLInputElement).labels ?? [])].some((label) => label.contains(seen)));
    });
  };
  const faults: string[] = [];
  for (const one of all) {
    one.focus();
    if (document.activeElement !== one || !covered(one)) continue;
    await new Promise((gone) => setTimeout(gone, NOTE_GONE_MS));
    if (covered(one)) faults.push(`"${(one.getAttribute('aria-label') ?? one.textContent ?? '').slice(0, 60)}" has the focus and is covered`);
  }
  return faults;
}
