import type { LocalDate } from '../../shared-core/calendar/local-date.ts';
import type { SessionsView, StandingSession } from '../../shared-core/views/sessions-view-schema.ts';
import type { HouseholdWords } from '../ui/household-words.ts';
import { sessionDay, sessionState, sessionTasks } from '../ui/plan/plan-words.ts';
import type { TriedMove } from '../ui/plan/move-store.ts';
import { tell } from '../ui/words/tell.ts';

/** A session as a post of the yard. */
export interface YardPost {
  readonly session: StandingSession;
  /** Where it is drawn: where it stands, or where it is being moved to. */
  readonly day: LocalDate;
  readonly kept: boolean;
  readonly lifted: boolean;
  /** Day and place. */
  readonly label: string;
  /** How many tasks, and how it stands. */
  readonly rest: string;
}

/** The posts of the yard, by day; one that is being moved stands where it would be put. */
export function yardPosts(view: Pick<SessionsView, 'sessions' | 'places' | 'today'>, move: TriedMove | null, words: HouseholdWords): readonly YardPost[] {
  return view.sessions.map((session) => yardPost(session, view, move, words)).sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
}

function yardPost(session: StandingSession, { places, today }: Pick<SessionsView, 'places' | 'today'>, move: TriedMove | null, words: HouseholdWords): YardPost {
  const lifted = move !== null && move.subject.session === session.id && !move.subject.part;
  const day = lifted ? move.to.day : session.day;
  const placeName = lifted ? (places.find((one) => one.id === move.to.place)?.name ?? session.placeName) : session.placeName;
  return {
    session,
    day,
    lifted,
    kept: session.state !== 'proposed',
    label: tell('posts.label', { day: sessionDay(day, today, words), place: placeName }),
    rest: tell('posts.rest', { tasks: sessionTasks(session, session.joins !== null), state: sessionState(session) }),
  };
}
