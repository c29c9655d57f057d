import type { VisitView } from '../../../shared-core/views/coverage-view.ts';
import { useWords } from '../../ui/household.tsx';
import { tell } from '../../ui/words/tell.ts';
import sectionStyles from '../../ui/section.module.css';
import styles from './services.module.css';

/** One time at which a line was worked on: when, by whom, what came of it. */
export function Visit({ visit }: { readonly visit: VisitView }) {
  const words = useWords();
  const { date, note, papers, reconstructed } = visit;
  const remarks = [whoWords(visit), workWords(visit), ...(papers === 0 ? [] : [tell('services.papers', { n: papers })]), ...(reconstructed ? [tell('services.from-memory')] : [])];
  return (
    <div className={styles.visit}>
      <p><span className={styles.when}>{words.date(date)}</span> {remarks.join(' · ')}</p>
      {note !== '' && <p className={sectionStyles.small}>{note}</p>}
    </div>
  );
}

/** Who did it. @example whoWords({ place: 'home', by: 'keeper' }) //=> 'keeper, at home' */
export function whoWords({ place, by }: Pick<VisitView, 'place' | 'by'>): string {
  if (place === 'garage') return by ?? tell('services.garage');
  return by === null ? tell('services.home') : tell('services.home-by', { name: by });
}

/** What was done to it, and what was found where it was looked at. */
export function workWords({ work, outcome }: Pick<VisitView, 'work' | 'outcome'>): string {
  if (outcome === 'not-done') return tell('services.visit-left');
  if (work === 'replace') return tell('services.visit-replaced');
  return outcome === 'done' ? tell('outcome.done') : tell('services.visit-looked', { outcome: tell(`outcome.${outcome}`) });
}
