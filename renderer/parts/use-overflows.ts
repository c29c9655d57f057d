import { useEffect, useState, type RefObject } from 'react';

/** Whether something is wider than the frame it stands in, so that the frame has to be moved sideways. */
export function useOverflows(frame: RefObject<HTMLElement | null>): boolean {
  const [overflows, setOverflows] = useState(false);
  useEffect(() => {
    const element = frame.current;
    if (element === null) return undefined;
    const observer = new ResizeObserver(() => setOverflows(element.scrollWidth > element.clientWidth));
    observer.observe(element);
    if (element.firstElementChild !== null) observer.observe(element.firstElementChild);
    return () => observer.disconnect();
  }, [frame]);
  return overflows;
}
