import { Link } from 'wouter';
import type { Doing } from '../../../shared-core/views/doing-schema.ts';
import { Asked } from '../../ui/asked.tsx';
import { minutesWords } from '../../ui/due-words.ts';
import { useWords } from '../../ui/household.tsx';
import { sessionTitle } from '../../ui/plan/plan-words.ts';
import { ScreenTitle } from '../../ui/screen-title.tsx';
import { useAsk } from '../../ui/use-ask.ts';
import { tell } from '../../ui/words/tell.ts';
import { BeforeWork } from './before-work.tsx';
import styles from './doing.module.css';
import waysStyles from '../ways.module.css';
import { StepByStep } from './step-by-step.tsx';

/** A session as it is worked, with dirty hands: one thing at a time, each tick written at once. */
export function DoingScreen({ session }: { readonly session: string }) {
  const words = useWords();
  const answer = useAsk('work.show', { session }, { hold: true });
  const title = answer.state === 'answered' ? tell('doing.title-of', { title: sessionTitle(answer.value.session, answer.value.today, words) }) : tell('doing.title');
  const back = <Link href="/sessions">{tell('job.back')}</Link>;
  return (
    <div className={styles.screen}>
      <div className={styles.top}>
        <p className={waysStyles.ways}>{back} <Link href={`/sessions/${session}/sheet`}>{tell('job.open')}</Link></p>
        <ScreenTitle>{title}</ScreenTitle>
      </div>
      <Asked answer={answer} onward={back}>{(doing) => <Body doing={doing} />}</Asked>
    </div>
  );
}

function Body({ doing }: { readonly doing: Doing }) {
  if (doing.session.state === 'done') return <Ended doing={doing} />;
  if (doing.session.state === 'cancelled') return <p>{tell('doing.dropped')}</p>;
  if (doing.session.state === 'proposed') return <p>{tell('doing.proposed')}</p>;
  if (doing.steps.length === 0) return <p>{tell('job.empty')} <Link href={`/sessions/${doing.session.id}/close`}>{tell('doing.close')}</Link></p>;
  return doing.begunAt === null || doing.unread.length > 0 ? <BeforeWork doing={doing} /> : <StepByStep doing={doing} />;
}

/** What is left to see of a session that is ended: the time it took, which a record holds only of what was done. */
function Ended({ doing }: { readonly doing: Doing }) {
  return (
    <>
      <p>{tell('doing.ended')}</p>
      {doing.spent.length > 0 && (
        <>
          <h2>{tell('doing.spent')}</h2>
          <ul>
            {doing.spent.map(({ key, name, carName, minutes, done }) => <li key={key}>{tell(done ? 'doing.spent-done' : 'doing.spent-not-done', { task: name, car: carName, minutes: minutesWords(minutes) })}</li>)}
          </ul>
        </>
      )}
    </>
  );
}
