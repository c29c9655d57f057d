import { nearMark } from './near-mark.ts';

/** Marks and lanes are found by these attributes. */
const MARK = '[data-mark]';
const LANE = '[data-lane]';

/**
 * Moves the focus from a mark as an arrow key says: left and right within its lane, up and down to the nearest mark of
 * the next lane that has one. Answers whether the key was taken.
 */
export function moveAmongMarks(key: string, from: HTMLElement): boolean {
  const lane = from.closest(LANE);
  if (lane === null || !from.matches(MARK)) return false;
  const target = targetOf(key, from, lane);
  target?.focus();
  return target !== null;
}

function targetOf(key: string, from: HTMLElement, lane: Element): HTMLElement | null {
  const marks = marksIn(lane);
  const at = marks.indexOf(from);
  switch (key) {
    case 'ArrowRight':
      return marks[at + 1] ?? null;
    case 'ArrowLeft':
      return marks[at - 1] ?? null;
    case 'Home':
      return marks[0] ?? null;
    case 'End':
      return marks.at(-1) ?? null;
    case 'ArrowDown':
      return nearestIn(lanesOf(lane).slice(lanesOf(lane).indexOf(lane) + 1), from);
    case 'ArrowUp':
      return nearestIn(lanesOf(lane).slice(0, lanesOf(lane).indexOf(lane)).reverse(), from);
    default:
      return null;
  }
}

function lanesOf(lane: Element): Element[] {
  return [...(lane.parentElement?.querySelectorAll(LANE) ?? [])];
}

function marksIn(lane: Element): HTMLElement[] {
  return [...lane.querySelectorAll<HTMLElement>(MARK)];
}

function nearestIn(lanes: readonly Element[], from: HTMLElement): HTMLElement | null {
  const { left, right } = from.getBoundingClientRect();
  const marks = lanes.map(marksIn).find((some) => some.length > 0) ?? [];
  const places = marks.map((element) => ({ id: element.dataset['mark'] ?? '', element, left: element.getBoundingClientRect().left, right: element.getBoundingClientRect().right }));
  return nearMark(places, (left + right) / 2)?.element ?? null;
}
