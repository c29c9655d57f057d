import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { StandingTask } from '../../../shared-core/views/sessions-view-schema.ts';
import { minutesWords } from '../due-words.ts';
import { useWords } from '../household.tsx';
import type { HouseholdWords } from '../household-words.ts';
import { tell } from '../words/tell.ts';
import { inOwnMoney } from './plan-words.ts';
import styles from './session.module.css';

interface TaskRowProps {
  readonly task: StandingTask;
  readonly action: ReactNode;
}

/** A task of a session: whose it is, how long it takes, what it costs there, and why it stands there. */
export function TaskRow({ task, action }: TaskRowProps) {
  const words = useWords();
  const { planned } = task;
  return (
    <li className={styles.task}>
      <div className={styles.taskHead}>
        <Link href={`/car/${task.car}/${task.task.kind}/${task.task.id}`} className={styles.taskName}>{tell('session.task', { car: task.carName, name: task.name })}</Link>
        {planned !== null && <span className={styles.amount}>{words.money(planned.terms.totalMinor)}</span>}
      </div>
      <div className={styles.taskHead}>
        <p className={styles.small}>{task.done ? tell('session.task-done') : planned !== null && factsOf(planned, words).join(' · ')}</p>
        {action}
      </div>
      {planned !== null && <p>{inOwnMoney(planned.why.text, words)}</p>}
    </li>
  );
}

/** Minutes, lateness, the last legal day, and of what the cost is made. */
function factsOf({ minutes, late, legalBy, terms }: NonNullable<StandingTask['planned']>, words: HouseholdWords): readonly string[] {
  return [
    minutesWords(minutes),
    ...(late ? [tell('session.task-late')] : []),
    ...(legalBy === null ? [] : [tell('session.task-by', { date: words.date(legalBy) })]),
    ...(terms.priceMinor > 0 ? [tell('session.task-price', { amount: words.money(terms.priceMinor) })] : []),
    ...(terms.earlyMinor > 0 ? [tell('session.task-early', { amount: words.money(terms.earlyMinor) })] : []),
    ...(terms.lateMinor > 0 ? [tell('session.task-waiting', { amount: words.money(terms.lateMinor) })] : []),
  ];
}
