import { useWords } from '../household.tsx';
import { sayFault } from '../form/say-fault.ts';
import { tell } from '../words/tell.ts';
import styles from './move-panel.module.css';
import { inOwnMoney } from './plan-words.ts';
import { sameSpot, type TriedMove } from './move-store.ts';

interface MoveOutcomeProps {
  readonly now: TriedMove;
  /** Day and place in words. */
  readonly where: string;
}

/** What a move would change, said politely at each step: cost and lateness, what speaks against it, and whether it may be kept at all. */
export function MoveOutcome({ now, where }: MoveOutcomeProps) {
  const words = useWords();
  const { tried, refusal, to, subject } = now;
  const stays = subject.from !== null && sameSpot(subject.from, to);
  const cannot = tried?.refusal ?? null;
  const against = tried === null || cannot !== null ? [] : tried.faults;
  return (
    <div className={styles.outcome}>
      <div role="status">
        {stays && refusal === null && <p>{tell('move.told', { where, what: tell('move.nothing') })}</p>}
        {!stays && tried === null && refusal === null && <p className={styles.soft}>{tell('move.asking')}</p>}
        {!stays && tried !== null && <p className={styles.told} data-way={tried.deltaMinor > 0 ? 'more' : tried.deltaMinor < 0 ? 'less' : 'same'}><span>{where}. </span><strong>{inOwnMoney(tried.text, words)}</strong></p>}
        {!stays && cannot !== null && <p className={styles.cannot}><strong>{tell('move.cannot')}</strong> {cannot.text}</p>}
        {!stays && against.length > 0 && <p className={styles.against}>{tell('move.against')} {against.map((one) => one.text).join(' ')}</p>}
      </div>
      <p role="alert" className={refusal === null ? 'only-said' : styles.cannot}>{refusal !== null && (<><strong>{tell('move.not-kept')}</strong> {sayFault(refusal)}</>)}</p>
    </div>
  );
}
