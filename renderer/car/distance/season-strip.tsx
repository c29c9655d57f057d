import { useId } from 'react';
import { useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './distance.module.css';

interface SeasonStripProps {
  /** A day of each month against an average day, in percent. */
  readonly months: readonly number[];
  readonly laidUp: readonly number[];
  readonly said: string;
}

/** How the months differ: one bar for each, laid-up ones hatched. */
export function SeasonStrip({ months, laidUp, said }: SeasonStripProps) {
  const words = useWords();
  const id = useId();
  const highest = Math.max(...months, 100);
  return (
    <>
      <p id={id} className={sectionStyles.small}>{said}</p>
      <ul className={styles.season} aria-labelledby={id}>
        {months.map((percent, at) => {
          const month = words.monthName(`2026-${String(at + 1).padStart(2, '0')}-01`);
          const rests = laidUp.includes(at + 1);
          return (
            <li key={month}>
              <span className={styles.bar} aria-hidden="true"><span data-rest={rests} style={{ height: `${Math.max(3, (percent / highest) * 100)}%` }} /></span>
              <span aria-hidden="true">{month}</span>
              <span className="only-said">{tell(rests ? 'use.month-rests' : 'use.month', { month, percent })}</span>
            </li>
          );
        })}
      </ul>
    </>
  );
}
