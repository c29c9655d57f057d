import { Button } from '@mantine/core';
import { Link } from 'wouter';
import type { PlanView } from '../../../shared-core/views/plan-view-schema.ts';
import type { SessionsView } from '../../../shared-core/views/sessions-view-schema.ts';
import { sayFault } from '../form/say-fault.ts';
import { useWords } from '../household.tsx';
import { note } from '../notices/notice-store.ts';
import { tell } from '../words/tell.ts';
import { clearProposed, keepAllProposed } from './board-changes.ts';
import styles from './plan-bar.module.css';
import { sayAll } from './plan-words.ts';
import { proposeSessions, stopProposing, useProposing } from './proposing.ts';

interface PlanBarProps {
  readonly view: SessionsView;
  /** A plan was laid on the yard. */
  readonly onPlan?: (plan: PlanView) => void;
}

/** What the sessions come to in a sentence or two, and the way to a plan: asked for, stopped, kept whole or cleared. */
export function PlanBar({ view, onPlan }: PlanBarProps) {
  const words = useWords();
  const { running, refusal } = useProposing();
  const proposed = view.sessions.filter((one) => one.state === 'proposed');
  const propose = async () => {
    const plan = await proposeSessions();
    if (plan !== null) onPlan?.(plan);
  };
  const all = async (change: typeof clearProposed, done: string) => {
    const reply = await change(view.sessions);
    if (reply.ok) note([done, ...(reply.value.notes ?? [])].join(' '), reply.value.undo);
    else note(sayFault(reply.refusal));
  };
  return (
    <section data-tour="plan" className={styles.bar} aria-label={tell('plan.place')}>
      <p className={styles.sentence}><strong>{countWords(view)}</strong> {view.sessions.length === 0 ? tell('sessions.none-what') : sayAll(view.summary, words)}</p>
      <div className={styles.actions}>
        <Button onClick={() => void propose()} aria-disabled={running} variant={proposed.length === 0 ? 'filled' : 'default'}>{tell(proposed.length === 0 ? 'plan.propose' : 'plan.again')}</Button>
        {proposed.length > 0 && <Button variant="filled" onClick={() => void all(keepAllProposed, tell('plan.kept-all', { n: proposed.length }))}>{tell('plan.keep-all', { n: proposed.length })}</Button>}
        {proposed.length > 0 && <Button variant="subtle" onClick={() => void all(clearProposed, tell('plan.cleared'))}>{tell('plan.clear')}</Button>}
        <Link href="/settings/planning" className={styles.settings}>{tell('plan.settings')}</Link>
      </div>
      <Progress />
      <p role="alert" className={refusal === null ? 'only-said' : styles.fault}>{refusal !== null && sayFault(refusal)}</p>
    </section>
  );
}

/** Who listens hears once that it is being looked for; how far it is, is for the eye. */
function Progress() {
  const { running, stopping, steps } = useProposing();
  return (
    <div className={running ? styles.progress : 'only-said'}>
      <p role="status">{running && tell(stopping ? 'plan.stopping' : 'plan.looking')}</p>
      {running && (
        <>
          <progress aria-label={tell('plan.looking')} />
          <span className={styles.steps} aria-hidden="true">{steps > 0 && tell('plan.steps', { n: steps })}</span>
          <Button size="compact-md" variant="default" onClick={stopProposing} aria-disabled={stopping}>{tell('plan.stop')}</Button>
        </>
      )}
    </div>
  );
}

function countWords({ sessions }: SessionsView): string {
  if (sessions.length === 0) return tell('sessions.none');
  const proposed = sessions.filter((one) => one.state === 'proposed').length;
  const rest = proposed === 0 ? '' : proposed === sessions.length ? tell('sessions.all-proposed') : tell('sessions.some-proposed', { n: proposed });
  return `${tell('sessions.count', { n: sessions.length })}${rest}.`;
}
