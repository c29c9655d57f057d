import type { RecordView } from '../../../shared-core/views/record-view.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import styles from './record.module.css';

/** What was noted with the record, and what it settled. */
export function RecordBeside({ view: { noted, settled } }: { readonly view: RecordView }) {
  const words = useWords();
  if (noted.length + settled.length === 0) return null;
  return (
    <Section title={tell('observations.title')}>
      <ul className={styles.plain}>
        {noted.map((one) => <li key={one.id}>{tell(one.closedOn === null ? 'record.noted' : 'record.noted-closed', { text: one.text, date: words.date(one.closedOn ?? one.recheckOn ?? one.date) })}</li>)}
        {settled.map((one) => <li key={one.id}>{tell('record.settled', { text: one.text, date: words.date(one.date) })}</li>)}
      </ul>
    </Section>
  );
}
