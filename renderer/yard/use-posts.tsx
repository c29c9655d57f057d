import { useCallback, useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { SessionsView, StandingSession } from '../../shared-core/views/sessions-view-schema.ts';
import { useWords } from '../ui/household.tsx';
import { firstSpot } from '../ui/plan/first-spot.ts';
import { moveKey } from '../ui/plan/move-keys.ts';
import { keepMove, MovePanel } from '../ui/plan/move-panel.tsx';
import { sessionTitle } from '../ui/plan/plan-words.ts';
import { wholeSubject } from '../ui/plan/session-body.tsx';
import { useMove } from '../ui/plan/use-move.ts';
import type { MoveSubject } from '../ui/plan/move-store.ts';
import { tell } from '../ui/words/tell.ts';
import { focusHeading } from '../ui/screen-title.tsx';
import { focusSpot, spotOf } from './focus-spot.ts';
import { yardPosts, type YardPost } from './yard-post.ts';

/** The posts of the yard, and what can be done with them. */
export interface PostControl {
  readonly posts: readonly YardPost[];
  /** The session whose sheet is open. */
  readonly opened: StandingSession | null;
  readonly open: (session: StandingSession) => void;
  readonly close: () => void;
  /** Draws a post to a day. */
  readonly drag: (session: StandingSession, day: LocalDate) => void;
  /** Takes something up to be moved, by fields or, where it is a whole session, by its post. */
  readonly lift: (subject: MoveSubject) => void;
  /** A key on a post; answers whether it was taken. */
  readonly key: (session: StandingSession, key: string) => boolean;
  /** What is being moved, and what that changes. */
  readonly panel: ReactNode;
}

/** Opens and moves the posts: by pointer and by keys alike they are lifted, tried and then kept or put back. */
export function usePosts(view: SessionsView | null): PostControl {
  const words = useWords();
  const control = useMove();
  const { move, lift, place, putBack } = control;
  const [openedId, setOpenedId] = useState<string | null>(null);
  const today = view?.today ?? null;
  const opened = view?.sessions.find((one) => one.id === openedId) ?? null;
  const noteOpenedFrom = useFocusAfterSheet(opened !== null);

  const liftWhole = useCallback((session: StandingSession, day: LocalDate) => {
    if (today !== null) lift(wholeSubject(session, sessionTitle(session, today, words)), { day, place: session.place }, 'post');
  }, [lift, today, words]);

  const lifted = move !== null && !move.subject.part ? move.subject.session : null;
  const isLifted = (session: StandingSession) => lifted !== null && lifted === session.id;
  const movedTo = move?.to.place ?? null;

  const drag = useCallback((session: StandingSession, day: LocalDate) => {
    if (lifted === session.id && movedTo !== null) place({ day, place: movedTo });
    else liftWhole(session, day);
  }, [lifted, movedTo, place, liftWhole]);

  const key = (session: StandingSession, name: string): boolean => {
    if (view === null) return false;
    if (!isLifted(session) || move === null) {
      if (name.toLowerCase() !== 'm' || session.tasks.every((one) => one.done)) return false;
      liftWhole(session, session.day);
      return true;
    }
    const does = moveKey(name, move.to, view.places.map((one) => one.id), view.today);
    if (does?.does === 'place') place(does.to);
    if (does?.does === 'put-back') putBack();
    if (does?.does === 'keep') void keepMove(control, view, words);
    return does !== null;
  };

  const liftAny = (subject: MoveSubject) => {
    if (view === null) return;
    const whole = subject.session !== null && !subject.part;
    noteOpenedFrom(null);
    lift(subject, subject.from ?? firstSpot(view), whole ? 'post' : 'fields');
    if (whole) requestAnimationFrame(() => focusPost(subject.session));
  };

  const posts = useMemo(() => (view === null ? [] : yardPosts(view, move, words)), [view, move, words]);

  return {
    posts,
    opened,
    open: (session) => {
      noteOpenedFrom(spotOf(session));
      setOpenedId(session.id);
    },
    close: () => setOpenedId(null),
    drag,
    lift: liftAny,
    key,
    panel: view !== null && <MovePanel view={view} move={control} hint={tell('move.keys')} onEnd={() => requestAnimationFrame(() => focusPost(move?.subject.session ?? null))} />,
  };
}

/** Longer than the sheet needs to give the focus back where it came from. */
const GIVEN_BACK_MS = 50;

/**
 * A session that is kept or dropped in its sheet may be gone from its post before the sheet closes, and the focus with it: then it goes to
 * what stands where the sheet was opened from. The answer notes that spot; null where something else is about to take the focus.
 */
function useFocusAfterSheet(isOpen: boolean): (spot: string | null) => void {
  const openedFrom = useRef<string | null>(null);
  useEffect(() => {
    const spot = openedFrom.current;
    if (isOpen || spot === null) return undefined;
    const timer = setTimeout(() => {
      openedFrom.current = null;
      if (document.activeElement === document.body) focusSpot(document, spot);
    }, GIVEN_BACK_MS);
    return () => clearTimeout(timer);
  }, [isOpen]);
  return useCallback((spot) => void (openedFrom.current = spot), []);
}

/** The post of a session, else the first one, else the screen's heading. */
function focusPost(session: string | null): void {
  const post = document.querySelector<HTMLElement>(`[data-mark="post/${session ?? ''}"]`) ?? document.querySelector<HTMLElement>('[data-spot]');
  if (post === null) focusHeading();
  else post.focus();
}
