import { Button } from '@mantine/core';
import { useId, useState } from 'react';
import type { LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { StandingSession } from '../../../shared-core/views/sessions-view-schema.ts';
import { minutesWords } from '../due-words.ts';
import { sayFault } from '../form/say-fault.ts';
import { useWords } from '../household.tsx';
import { note } from '../notices/notice-store.ts';
import { tell } from '../words/tell.ts';
import { takeTaskOut } from './board-changes.ts';
import { sessionDay, sessionState, sessionTitle } from './plan-words.ts';
import { SessionButtons } from './session-buttons.tsx';
import sectionStyles from '../section.module.css';
import tones from '../tones.module.css';
import styles from './session.module.css';
import { TaskRow } from './task-row.tsx';
import type { MoveSubject } from './move-store.ts';
import { WorkAsked } from './work-asked.tsx';

interface SessionBodyProps {
  readonly session: StandingSession;
  readonly today: LocalDate;
  readonly onMove: (subject: MoveSubject) => void;
  /** It was kept, dropped or ended. */
  readonly onDone: () => void;
}

/** Everything of a session: how it stands, what it holds and costs, its tasks with their reasons, and what can be done with it. */
export function SessionBody({ session, today, onMove, onDone }: SessionBodyProps) {
  const words = useWords();
  const id = useId();
  const title = sessionTitle(session, today, words);
  const costs = [
    tell('session.minutes', { used: minutesWords(session.dayMinutes), most: minutesWords(session.mostMinutes) }),
    ...(session.openingMinor > 0 ? [tell('session.opening', { amount: words.money(session.openingMinor) })] : []),
    ...(session.minutesMinor > 0 ? [tell('session.minutes-cost', { amount: words.money(session.minutesMinor) })] : []),
  ];
  return (
    <div className={styles.body}>
      <p className={styles.standing}><span className={styles.state} data-kept={session.state !== 'proposed'}>{sessionState(session)}</span> <span>{costs.join(' · ')}</span></p>
      {session.joins !== null && <p className={styles.soft}>{tell('session.joins')}</p>}
      {session.booking !== null && session.state !== 'proposed' && <p className={session.booking.askByPast ? tones.late : styles.soft}>{tell('booking.state', { said: session.booking.said.text })}</p>}
      {session.begun !== null && <p className={styles.soft}>{tell('session.begun', { n: session.begun.ticked, of: session.begun.steps })}</p>}
      {session.movedFrom !== null && <p className={styles.soft}>{tell('session.moved-from', { day: sessionDay(session.movedFrom.day, today, words) })}</p>}
      {session.note !== '' && <p className={styles.soft}>{tell('session.note', { note: session.note })}</p>}
      <SessionButtons session={session} title={title} today={today} onMove={() => onMove(wholeSubject(session, title))} onDone={onDone} />
      <h3 id={id} className={styles.heading}>{tell('session.tasks-title')}</h3>
      <ul className={sectionStyles.list} aria-labelledby={id}>
        {session.tasks.map((task) => (
          <TaskRow key={`${task.task.kind}/${task.task.id}`} task={task} action={!task.done && (<span className={styles.taskButtons}>
            {session.tasks.length > 1 && <TakeOutButton session={session} task={task} onDone={onDone} />}
            <Button size="compact-sm" variant="default" aria-label={tell('session.task-move-of', { task: tell('session.task', { car: task.carName, name: task.name }) })} onClick={() => onMove({ session: session.id, part: session.tasks.length > 1, tasks: [task.task], from: { day: session.day, place: session.place }, title: tell('session.task', { car: task.carName, name: task.name }) })}>
              {tell('session.task-move')}
            </Button>
          </span>)} />
        ))}
      </ul>
    </div>
  );
}

interface TakeOutProps extends Pick<SessionBodyProps, 'session' | 'onDone'> {
  readonly task: StandingSession['tasks'][number];
}

/** Takes a task out of its session without giving it another day. */
function TakeOutButton({ session, task, onDone }: TakeOutProps) {
  const named = { task: tell('session.task', { car: task.carName, name: task.name }) };
  const [asked, setAsked] = useState<string | null>(null);
  const takeOut = async (sure = false) => {
    const reply = await takeTaskOut(session, task.task, sure);
    if (!reply.ok && reply.refusal.code === 'work-in-hand-on-task') return setAsked(sayFault(reply.refusal));
    setAsked(null);
    note(reply.ok ? tell('session.task-taken-out', named) : sayFault(reply.refusal), reply.ok ? reply.value.undo : []);
    if (reply.ok) onDone();
  };
  if (asked !== null) return <WorkAsked said={asked} sure={tell('session.task-out-sure')} onSure={() => void takeOut(true)} onLeave={() => setAsked(null)} />;
  return <Button size="compact-sm" variant="default" aria-label={tell('session.task-out-of', named)} onClick={() => void takeOut()}>{tell('session.task-out')}</Button>;
}

/** A whole session as something to move: its tasks that are still to be done. */
export function wholeSubject(session: Pick<StandingSession, 'id' | 'day' | 'place' | 'tasks'>, title: string): MoveSubject {
  const tasks = session.tasks.filter((one) => !one.done).map((one) => one.task);
  return { session: session.id, part: false, tasks, from: { day: session.day, place: session.place }, title: tell('move.what', { title, tasks: tell('session.tasks', { n: tasks.length }) }) };
}
