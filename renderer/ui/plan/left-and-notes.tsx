import { Button } from '@mantine/core';
import { useId } from 'react';
import { Link } from 'wouter';
import type { SessionsView } from '../../../shared-core/views/sessions-view-schema.ts';
import { minutesWords } from '../due-words.ts';
import { useWords } from '../household.tsx';
import { tell } from '../words/tell.ts';
import { inOwnMoney } from './plan-words.ts';
import sectionStyles from '../section.module.css';
import styles from './session.module.css';
import type { MoveSubject } from './move-store.ts';

interface LeftAndNotesProps {
  readonly view: SessionsView;
  /** Under what they stand: a screen's own heading, or a sheet's. */
  readonly heading?: 'h2' | 'h3';
  readonly onMove: (subject: MoveSubject) => void;
}

/** What stands in no session and why, and what the plan rests on that nobody has said. */
export function LeftAndNotes({ view, heading: Heading = 'h3', onMove }: LeftAndNotesProps) {
  const words = useWords();
  const id = useId();
  return (
    <>
      <section className={styles.part} aria-labelledby={`${id}-left`}>
        <Heading id={`${id}-left`} className={styles.heading}>{tell('left.title')}</Heading>
        {view.left.length === 0 && <p className={styles.soft}>{tell('left.none')}</p>}
        {view.left.length > 0 && (
          <ul className={sectionStyles.list} aria-labelledby={`${id}-left`}>
            {view.left.map(({ task, car, carName, name, minutes, late, terms, why }) => {
              const title = tell('session.task', { car: carName, name });
              return (
                <li key={`${task.kind}/${task.id}`} className={styles.task}>
                  <div className={styles.taskHead}>
                    <Link href={`/car/${car}/${task.kind}/${task.id}`} className={styles.taskName}>{title}</Link>
                    <span className={styles.amount}>{words.money(terms.totalMinor)}</span>
                  </div>
                  <div className={styles.taskHead}>
                    <p className={styles.small}>{[minutesWords(minutes), ...(late ? [tell('session.task-late')] : [])].join(' · ')}</p>
                    <Button size="compact-sm" variant="default" aria-label={tell('left.give-day-of', { task: title })} onClick={() => onMove({ session: null, part: false, tasks: [task], from: null, title })}>{tell('left.give-day')}</Button>
                  </div>
                  <p>{inOwnMoney(why.text, words)}</p>
                </li>
              );
            })}
          </ul>
        )}
      </section>
      {view.notes.length > 0 && (
        <section className={styles.part} aria-labelledby={`${id}-notes`}>
          <Heading id={`${id}-notes`} className={styles.heading}>{tell('notes.title')}</Heading>
          <ul className={styles.notes}>{view.notes.map((one) => <li key={one.text}>{inOwnMoney(one.text, words)}</li>)}</ul>
        </section>
      )}
    </>
  );
}
