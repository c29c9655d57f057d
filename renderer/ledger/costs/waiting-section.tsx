import { Link } from 'wouter';
import type { LedgerView } from '../../../shared-core/views/ledger-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import sectionStyles from '../../ui/section.module.css';
import { tell } from '../../ui/words/tell.ts';
import styles from '../ledger.module.css';

/** What is late, with what a further year of waiting counts by the plan's rates. */
export function WaitingSection({ view }: { readonly view: LedgerView }) {
  const words = useWords();
  if (view.waiting.length === 0) return null;
  return (
    <Section title={tell('ledger.waiting')} hint={tell('ledger.waiting-what')}>
      <ul className={sectionStyles.list}>
        {view.waiting.map((one) => (
          <li key={one.item} className={styles.row}>
            <div className={styles.head}>
              <span><Link href={`/car/${one.car}`}>{tell('ledger.waiting-one', { car: one.carName, item: one.name })}</Link> <span className={sectionStyles.small}>{tell(`ledger-harm.${one.harm}`)}</span></span>
              <span>{words.money(one.aYearMinor)}</span>
            </div>
          </li>
        ))}
      </ul>
    </Section>
  );
}
