import { useCallback, useState } from 'react';
import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import { A_YEAR, movedSight, quarterOf, steppedSight } from './calendar-sight.ts';
import type { Sight } from './time-scale.ts';

/** What of the calendar is seen, and the ways to see another part of it. */
export interface SightControl {
  readonly sight: Sight;
  readonly setSpan: (span: number) => void;
  /** One step nearer (-1) or wider (1), about a place on the paper where one points at it. */
  readonly step: (step: -1 | 1, at?: { readonly x: number; readonly width: number }) => void;
  readonly moveDays: (days: number) => void;
  /** A quarter of what is seen, ahead (1) or back (-1). */
  readonly moveOn: (way: -1 | 1) => void;
  readonly toToday: () => void;
}

/** As it was left: one comes back from a car to the same part of the calendar. */
let left: Sight = A_YEAR;

/** The part of the calendar that the yard shows; it stays as it was left while the page is open. */
export function useSight(today: LocalDate): SightControl {
  const [sight, setSight] = useState(left);
  const change = useCallback((next: (now: Sight) => Sight) => {
    left = next(left);
    setSight(left);
  }, []);
  return {
    sight,
    setSpan: (span) => change((now) => movedSight(today, { ...now, span }, 0)),
    step: (step, at) => change((now) => steppedSight(today, now, step, at)),
    moveDays: (days) => change((now) => movedSight(today, now, days)),
    moveOn: (way) => change((now) => movedSight(today, now, way * quarterOf(today, now))),
    toToday: () => change((now) => ({ ...now, shift: 0 })),
  };
}
