import type { LedgerView } from '../../../shared-core/views/ledger-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import { Section } from '../../ui/section.tsx';
import sectionStyles from '../../ui/section.module.css';
import { isWordKey, tell } from '../../ui/words/tell.ts';
import styles from '../ledger.module.css';

/** What was paid for and stands for something still, and what went for nothing. */
export function StandingSection({ view }: { readonly view: LedgerView }) {
  const words = useWords();
  const rows = [...view.standing].sort((a, b) => (a.kind === b.kind ? b.minor - a.minor : a.kind < b.kind ? -1 : 1));
  return (
    <>
      {rows.length > 0 && (
        <Section title={tell('ledger.standing')} hint={tell('ledger.standing-what')}>
          <ul className={sectionStyles.list}>
            {rows.map((one) => <Row key={`${one.kind} ${one.source.kind} ${one.source.id}`} name={one.name} about={standingWords(one.kind)} sum={words.money(one.minor)} />)}
          </ul>
        </Section>
      )}
      {view.gone.length > 0 && (
        <Section title={tell('ledger.gone')} hint={tell('ledger.gone-what')}>
          <ul className={sectionStyles.list}>
            {view.gone.map((one, at) => <Row key={`${one.source.id} ${at}`} name={one.name} about={`${standingWords(one.kind)}, ${words.date(one.on)}`} sum={words.money(one.minor)} />)}
          </ul>
        </Section>
      )}
    </>
  );
}

function Row({ name, about, sum }: { readonly name: string; readonly about: string; readonly sum: string }) {
  return (
    <li className={styles.row}>
      <div className={styles.head}><span>{name} <span className={sectionStyles.small}>{about}</span></span><span>{sum}</span></div>
    </li>
  );
}

function standingWords(kind: string): string {
  const key = `ledger-standing.${kind}`;
  return isWordKey(key) ? tell(key) : kind;
}
