import { Button } from '@mantine/core';
import type { SessionsView, StandingSession } from '../../shared-core/views/sessions-view-schema.ts';
import { minutesWords } from '../ui/due-words.ts';
import { useWords } from '../ui/household.tsx';
import { sessionDay, sessionState, sessionTasks } from '../ui/plan/plan-words.ts';
import { tell } from '../ui/words/tell.ts';
import { YardTable } from './yard-table.tsx';
import styles from './yard-table.module.css';

interface SessionTableProps {
  readonly view: SessionsView;
  readonly onOpen: (session: StandingSession) => void;
}

/** The posts of the yard as rows of a table. */
export function SessionTable({ view, onOpen }: SessionTableProps) {
  const words = useWords();
  if (view.sessions.length === 0) return null;
  const open = <span className="only-said">{tell('session.open')}</span>;
  const heads = [tell('session-table.day'), tell('session-table.place'), tell('session-table.state'), tell('session-table.tasks'), tell('session-table.work'), open];
  return (
    <YardTable caption={tell('posts.title')} heads={heads} second>
      {view.sessions.map((session) => (
        <tr key={session.id}>
          <th scope="row" className={styles.what}>{sessionDay(session.day, view.today, words)}</th>
          <td>{session.placeName}</td>
          <td>{sessionState(session)}</td>
          <td>{sessionTasks(session, session.joins !== null)}</td>
          <td>{minutesWords(session.minutes)}</td>
          <td><Button size="compact-sm" variant="default" onClick={() => onOpen(session)} aria-label={tell('session.open-of', { title: tell('session.title', { day: sessionDay(session.day, view.today, words), place: session.placeName }) })}>{tell('session.open')}</Button></td>
        </tr>
      ))}
    </YardTable>
  );
}
