import { Button } from '@mantine/core';
import { useState } from 'react';
import { Link } from 'wouter';
import type { LocalDate } from '../../../shared-core/calendar/local-date.ts';
import type { StandingSession } from '../../../shared-core/views/sessions-view-schema.ts';
import { sayFault } from '../form/say-fault.ts';
import { note } from '../notices/notice-store.ts';
import { tell, type WordKey } from '../words/tell.ts';
import { dropSession, endSession, keepSession } from './board-changes.ts';
import styles from './session.module.css';
import { WorkAsked } from './work-asked.tsx';

interface SessionButtonsProps {
  readonly session: StandingSession;
  readonly title: string;
  readonly today: LocalDate;
  readonly onMove: () => void;
  readonly onDone: () => void;
}

/** What can be done with a session: kept, moved, dropped, its job sheet read; one whose day has come was done. */
export function SessionButtons({ session, title, today, onMove, onDone }: SessionButtonsProps) {
  const [asked, setAsked] = useState<{ readonly said: string; readonly sure: () => void } | null>(null);
  const run = async (send: (one: StandingSession, sure?: boolean) => ReturnType<typeof dropSession>, done: WordKey, sure = false) => {
    const reply = await send(session, sure);
    setAsked(!reply.ok && reply.refusal.code === 'work-in-hand' ? { said: sayFault(reply.refusal), sure: () => void run(send, done, true) } : null);
    if (!reply.ok && reply.refusal.code === 'work-in-hand') return;
    note(reply.ok ? [tell(done, { title }), ...(reply.value.notes ?? [])].join(' ') : sayFault(reply.refusal), reply.ok ? reply.value.undo : []);
    if (reply.ok) onDone();
  };
  if (asked !== null) {
    const record = session.day <= today && session.tasks.some((one) => !one.done) ? `/sessions/${session.id}/close` : undefined;
    return <WorkAsked said={asked.said} sure={tell('session.end-sure')} onSure={asked.sure} onLeave={() => setAsked(null)} record={record} />;
  }
  return (
    <div className={styles.buttons}>
      {session.state === 'proposed' && session.tasks.some((one) => !one.done) && <Button size="compact-md" aria-label={tell('session.keep-of', { title })} onClick={() => void run(keepSession, 'session.kept')}>{tell('session.keep')}</Button>}
      {session.state !== 'proposed' && session.day <= today && session.tasks.some((one) => !one.done) && <Button component={Link} href={`/sessions/${session.id}/close`} size="compact-md" variant="default" aria-label={tell('closing.open-of', { title })}>{tell('closing.open')}</Button>}
      {session.state !== 'proposed' && session.day <= today && session.tasks.every((one) => one.done) && <Button size="compact-md" aria-label={tell('session.done-of', { title })} onClick={() => void run(endSession, 'session.ended')}>{tell('session.done')}</Button>}
      {session.tasks.some((one) => !one.done) && <Button size="compact-md" variant="default" aria-label={tell('session.move-of', { title })} onClick={onMove}>{tell('session.move')}</Button>}
      {session.state !== 'proposed' && session.placeKind === 'home' && session.tasks.some((one) => !one.done) && <Button component={Link} href={`/sessions/${session.id}/work`} size="compact-md" variant="default" aria-label={tell('doing.start-of', { title })}>{tell('doing.start')}</Button>}
      {session.state !== 'proposed' && <Button component={Link} href={`/sessions/${session.id}/sheet`} size="compact-md" variant="default" aria-label={tell('job.open-of', { title })}>{tell('job.open')}</Button>}
      {session.state !== 'proposed' && session.placeKind === 'garage' && <Button component={Link} href={`/sessions/${session.id}/booking`} size="compact-md" variant="default" aria-label={tell('booking.open-of', { title })}>{tell('booking.open')}</Button>}
      <Button size="compact-md" variant="default" aria-label={tell('session.drop-of', { title })} onClick={() => void run(dropSession, 'session.dropped')}>{tell('session.drop')}</Button>
    </div>
  );
}
