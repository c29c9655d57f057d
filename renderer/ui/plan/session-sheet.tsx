import { useState } from 'react';
import type { SessionsView, StandingSession } from '../../../shared-core/views/sessions-view-schema.ts';
import { useWords } from '../household.tsx';
import { SideSheet } from '../side-sheet.tsx';
import { LeftAndNotes } from './left-and-notes.tsx';
import { sessionTitle } from './plan-words.ts';
import { SessionBody } from './session-body.tsx';
import type { MoveSubject } from './move-store.ts';

interface SessionSheetProps {
  readonly view: SessionsView;
  readonly session: StandingSession | null;
  readonly onClose: () => void;
  readonly onMove: (subject: MoveSubject) => void;
}

/** A session laid over the side of the screen, with what is left of the plan below it. */
export function SessionSheet({ view, session, onClose, onMove }: SessionSheetProps) {
  const words = useWords();
  const [moving, setMoving] = useState(false);
  const close = () => {
    setMoving(false);
    onClose();
  };
  const move = (subject: MoveSubject) => {
    setMoving(true);
    onClose();
    onMove(subject);
  };
  return (
    <SideSheet title={session === null ? '' : sessionTitle(session, view.today, words)} opened={session !== null} onClose={close} returnFocus={!moving}>
      {session !== null && (
        <>
          <SessionBody session={session} today={view.today} onMove={move} onDone={close} />
          <LeftAndNotes view={view} onMove={move} />
        </>
      )}
    </SideSheet>
  );
}
