import { useEffect, useRef, type RefObject } from 'react';

/**
 * Another part of the calendar takes marks off the paper, and the focus with them: it goes to the same mark where it still stands, else to the
 * first of its lane, else to the lane's name. The note of a mark is told by `onChange` to go, for its mark has moved.
 */
export function useFocusInLanes(sheet: RefObject<HTMLElement | null>, sight: string, onChange: () => void): void {
  const had = useRef<{ readonly mark: string; readonly lane: string } | null>(null);
  useEffect(() => {
    const element = sheet.current;
    const onFocusIn = ({ target }: FocusEvent) => {
      const mark = target instanceof HTMLElement ? target.closest<HTMLElement>('[data-mark]') : null;
      const lane = mark?.closest<HTMLElement>('[data-lane]') ?? null;
      had.current = mark === null || lane === null ? null : { mark: mark.dataset['mark'] ?? '', lane: lane.dataset['lane'] ?? '' };
    };
    element?.addEventListener('focusin', onFocusIn);
    return () => element?.removeEventListener('focusin', onFocusIn);
  }, [sheet]);
  useEffect(() => {
    onChange();
    const [element, at] = [sheet.current, had.current];
    if (element === null || at === null || document.activeElement !== document.body) return;
    const lane = [...element.querySelectorAll<HTMLElement>('[data-lane]')].find((one) => one.dataset['lane'] === at.lane);
    const marks = [...(lane?.querySelectorAll<HTMLElement>('[data-mark]') ?? [])];
    (marks.find((one) => one.dataset['mark'] === at.mark) ?? marks[0] ?? lane?.querySelector<HTMLElement>('h2 a'))?.focus({ preventScroll: true });
  }, [sheet, sight, onChange]);
}
