import { useEffect, useEffectEvent, useRef, type RefObject } from 'react';
import type { SightControl } from './use-sight.ts';

/** So far the wheel turns for one step; a notch of most mice is 100 or 120. */
const STEP_TURN = 90;
/** Lines and pages, where a wheel counts in them, in pixels. */
const PIXELS_OF_MODE = [1, 16, 400];

interface SightWheelOptions {
  /** The line of the months: the wheel over it goes nearer and wider. */
  readonly axis: RefObject<HTMLElement | null>;
  readonly control: SightControl;
  readonly pixelsADay: number;
}

/**
 * The wheel over the calendar: over the line of months it goes nearer and wider about the day that is pointed at; sideways, or with Shift,
 * it moves ahead and back wherever it is over the sheet. Over the lanes the wheel alone scrolls the page, as anywhere.
 */
export function useSightWheel(sheet: RefObject<HTMLElement | null>, { axis, control, pixelsADay }: SightWheelOptions): void {
  const turned = useRef(0);
  const onWheel = useEffectEvent((event: WheelEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const unit = PIXELS_OF_MODE[event.deltaMode] ?? 1;
    const sideways = event.shiftKey ? (event.deltaX === 0 ? event.deltaY : event.deltaX) : Math.abs(event.deltaX) > Math.abs(event.deltaY) ? event.deltaX : 0;
    if (sideways !== 0) {
      event.preventDefault();
      control.moveDays((sideways * unit) / pixelsADay);
      return;
    }
    const line = axis.current;
    if (line === null || !(event.target instanceof Node) || !line.contains(event.target)) return;
    event.preventDefault();
    turned.current = Math.sign(turned.current) === Math.sign(event.deltaY) ? turned.current + event.deltaY * unit : event.deltaY * unit;
    if (Math.abs(turned.current) < STEP_TURN) return;
    const box = line.getBoundingClientRect();
    control.step(turned.current > 0 ? 1 : -1, { x: event.clientX - box.left, width: box.width });
    turned.current = 0;
  });
  useEffect(() => {
    const element = sheet.current;
    const listen = (event: WheelEvent) => onWheel(event);
    // Only a listener that may be told to wait can keep the page from scrolling.
    element?.addEventListener('wheel', listen, { passive: false });
    return () => element?.removeEventListener('wheel', listen);
  }, [sheet]);
}
