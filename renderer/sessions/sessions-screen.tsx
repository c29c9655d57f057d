import { useState } from 'react';
import type { SessionsView, StandingSession } from '../../shared-core/views/sessions-view-schema.ts';
import { Asked } from '../ui/asked.tsx';
import type { HouseholdWords } from '../ui/household-words.ts';
import { useWords } from '../ui/household.tsx';
import { firstSpot } from '../ui/plan/first-spot.ts';
import { LeftAndNotes } from '../ui/plan/left-and-notes.tsx';
import { MovePanel } from '../ui/plan/move-panel.tsx';
import { PlanBar } from '../ui/plan/plan-bar.tsx';
import { sessionState, sessionTitle } from '../ui/plan/plan-words.ts';
import { SessionBody } from '../ui/plan/session-body.tsx';
import { useMove } from '../ui/plan/use-move.ts';
import type { MoveSubject } from '../ui/plan/move-store.ts';
import { useSessions } from '../ui/plan/use-sessions.ts';
import { focusHeading, ScreenTitle } from '../ui/screen-title.tsx';
import { Section } from '../ui/section.tsx';
import { tell } from '../ui/words/tell.ts';
import { GarageRows } from './booking/garage-rows.tsx';
import styles from './sessions.module.css';

/** The sessions in time, proposed and kept, with their tasks and reasons. */
export function SessionsScreen() {
  const answer = useSessions();
  return (
    <div className={styles.screen}>
      <ScreenTitle>{tell('sessions.title')}</ScreenTitle>
      <Asked answer={answer}>{(view) => <Sessions view={view} />}</Asked>
    </div>
  );
}

function Sessions({ view }: { readonly view: SessionsView }) {
  const words = useWords();
  const move = useMove();
  const [before, setBefore] = useState<HTMLElement | null>(null);
  const lift = (subject: MoveSubject) => {
    setBefore(document.activeElement instanceof HTMLElement ? document.activeElement : null);
    move.lift(subject, subject.from ?? firstSpot(view), 'fields');
  };
  const end = () => {
    // What was pressed is gone where it moved: then the screen's heading takes the focus.
    requestAnimationFrame(() => (before?.isConnected === true ? before.focus() : focusHeading()));
  };
  return (
    <>
      <PlanBar view={view} />
      {view.sessions.map((session) => (
        <Section key={session.id} place={['session', session.id]} title={headingOf(session, view.today, words)}>
          <SessionBody session={session} today={view.today} onMove={lift} onDone={focusHeading} />
        </Section>
      ))}
      {(view.sessions.length > 0 || view.notes.length > 0) && <div className={styles.left}><LeftAndNotes view={view} heading="h2" onMove={lift} /></div>}
      <GarageRows view={view} />
      <MovePanel view={view} move={move} onEnd={end} />
    </>
  );
}

/** Its day and place; what is proposed on top of a kept session says so, for the kept one has the same day and place. */
function headingOf(session: StandingSession, today: SessionsView['today'], words: HouseholdWords): string {
  const title = sessionTitle(session, today, words);
  return session.joins === null ? title : `${title} · ${sessionState(session)}`;
}
