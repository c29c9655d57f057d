import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { YardMark } from './yard-mark.ts';

/** The note beside a mark, which tells everything in words. */
export interface NotedMark {
  readonly mark: YardMark;
  readonly anchor: DOMRect;
}

export interface MarkNoteWays {
  readonly show: (mark: YardMark, element: Element) => void;
  /** Takes the note away at once: Escape, scrolling, another focus. */
  readonly hide: () => void;
  /** Takes it away unless the pointer goes on to the note itself. */
  readonly hideSoon: () => void;
  readonly keep: () => void;
}

export interface MarkNoteControl {
  readonly noted: NotedMark | null;
  /** The same ones always: what is given only these is not drawn anew for a note. */
  readonly ways: MarkNoteWays;
}

const GRACE_MS = 180;

/** Shows one note at a time; it can be hovered and dismissed (WCAG 2.2, 1.4.13). */
export function useMarkNote(): MarkNoteControl {
  const [noted, setNoted] = useState<NotedMark | null>(null);
  const timer = useRef<number | undefined>(undefined);
  const keep = useCallback(() => window.clearTimeout(timer.current), []);
  const hide = useCallback(() => {
    keep();
    setNoted(null);
  }, [keep]);
  const hideSoon = useCallback(() => {
    keep();
    timer.current = window.setTimeout(() => setNoted(null), GRACE_MS);
  }, [keep]);
  const show = useCallback(
    (mark: YardMark, element: Element) => {
      keep();
      setNoted({ mark, anchor: element.getBoundingClientRect() });
    },
    [keep],
  );
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => event.key === 'Escape' && hide();
    window.addEventListener('scroll', hide, { passive: true });
    window.addEventListener('keydown', onKey);
    return () => {
      keep();
      window.removeEventListener('scroll', hide);
      window.removeEventListener('keydown', onKey);
    };
  }, [hide, keep]);
  const ways = useMemo(() => ({ show, hide, hideSoon, keep }), [show, hide, hideSoon, keep]);
  return { noted, ways };
}
