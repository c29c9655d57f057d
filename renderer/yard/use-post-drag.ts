import { useCallback, useEffect, useMemo, useRef } from 'react';
import { addDays, later, type LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { StandingSession } from '../../shared-core/views/sessions-view-schema.ts';

export interface PostDrag {
  readonly begin: (session: StandingSession, event: React.PointerEvent) => void;
  /** Whether the press that ends now was a drag, so that it opens nothing. */
  readonly wasDrag: () => boolean;
}

/** A press that moves less than this is a press. */
const LEAST_PIXELS = 4;

interface PostDragOptions {
  readonly today: LocalDate;
  readonly pixelsADay: number;
  /** The post is drawn to a day. */
  readonly onDrag: (session: StandingSession, day: LocalDate) => void;
}

/** Draws a post along the calendar by the pointer, day by day, never before today. It stays where it is let go, to be kept or put back. */
export function usePostDrag({ today, pixelsADay, onDrag }: PostDragOptions): PostDrag {
  const dragged = useRef(false);
  const stop = useRef<() => void>(() => undefined);
  useEffect(() => () => stop.current(), []);
  const begin = useCallback((session: StandingSession, event: React.PointerEvent) => {
    dragged.current = false;
    if (event.button !== 0 || !event.isPrimary || session.passed) return;
    const startX = event.clientX;
    const onMove = ({ clientX }: PointerEvent) => {
      if (!dragged.current && Math.abs(clientX - startX) < LEAST_PIXELS) return;
      dragged.current = true;
      onDrag(session, later(today, addDays(session.day, Math.round((clientX - startX) / pixelsADay))));
    };
    stop.current();
    stop.current = () => {
      window.removeEventListener('pointermove', onMove);
      window.removeEventListener('pointerup', stop.current);
      window.removeEventListener('pointercancel', stop.current);
    };
    window.addEventListener('pointermove', onMove);
    window.addEventListener('pointerup', stop.current);
    window.addEventListener('pointercancel', stop.current);
  }, [today, pixelsADay, onDrag]);
  const wasDrag = useCallback(() => dragged.current, []);
  return useMemo(() => ({ begin, wasDrag }), [begin, wasDrag]);
}
