import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { PaperLink } from '../../ui/paper-link.tsx';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { SmallButton } from '../../ui/small-button.tsx';
import styles from '../parts.module.css';

interface WasteSectionProps {
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
}

/** What is kept to be disposed of rightly, the longest kept first; and where what is gone was taken to. */
export function WasteSection({ view, open }: WasteSectionProps) {
  const words = useWords();
  const kept = view.waste.filter((one) => one.disposed === null).sort((a, b) => (a.since < b.since ? -1 : 1));
  const gone = view.waste.filter((one) => one.disposed !== null).sort((a, b) => ((a.disposed?.on ?? '') < (b.disposed?.on ?? '') ? 1 : -1));
  const name = (one: PartsView['waste'][number]) => (one.quantity === null ? one.what : tell('waste.amount', { what: one.what, amount: amountWords(one.quantity, one.unit) }));
  return (
    <Section title={tell('waste.title')} hint={tell('waste.hint')} add={{ label: tell('waste.add'), onAdd: () => open({ kind: 'waste', waste: null }) }}>
      {kept.length === 0 && <p className={sectionStyles.soft}>{tell('waste.none')}</p>}
      <ul className={sectionStyles.list}>
        {kept.map((one) => (
          <li key={one.id} className={styles.row}>
            <div className={styles.head}>
              <span><strong>{name(one)}</strong> <span className={sectionStyles.small}>{[tell('waste.since', { date: words.date(one.since) }), ...(one.where === null ? [] : [one.where]), ...(one.note === '' ? [] : [one.note])].join(' · ')}</span></span>
              <span className={styles.rowActions}>
                <SmallButton of={name(one)} onPress={() => open({ kind: 'dispose', waste: one.id })}>{tell('waste.take')}</SmallButton>
                <SmallButton of={name(one)} onPress={() => open({ kind: 'waste', waste: one.id })}>{tell('parts.change')}</SmallButton>
              </span>
            </div>
          </li>
        ))}
      </ul>
      {gone.length > 0 && (
        <details className={styles.fold}>
          <summary>{tell('waste.gone', { n: gone.length })}</summary>
          <ul className={sectionStyles.list}>
            {gone.map((one) => (
              <li key={one.id} className={styles.row}>
                <span>{tell('waste.gone-one', { what: name(one), how: one.disposed?.how ?? '', date: one.disposed === null ? '' : words.date(one.disposed.on) })} {one.disposed?.paper != null && <PaperLink paper={one.disposed.paper} text={tell('waste.paper')} />}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </Section>
  );
}
