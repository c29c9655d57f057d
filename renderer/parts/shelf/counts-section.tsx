import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import styles from '../parts.module.css';

const FIRST = 5;

/** The counts of the shelf, the latest first, each with what differed from the books. */
export function CountsSection({ view }: { readonly view: PartsView }) {
  const words = useWords();
  if (view.stocktakes.length === 0) return null;
  const lots = new Map(view.shelf.map((one) => [one.lot.id, one]));
  return (
    <Section title={tell('counts.title')}>
      <ul className={sectionStyles.list}>
        {view.stocktakes.slice(0, FIRST).map((count) => {
          const other = count.lines.filter((line) => line.difference !== 0);
          return (
            <li key={count.id} className={styles.row}>
              <span>{[words.date(count.on), ...(count.where === null ? [] : [count.where]), tell('counts.lots', { n: count.lines.length }), ...(other.length === 0 ? [tell('counts.same')] : [])].join(' · ')}</span>
              {other.map((line) => {
                const lot = lots.get(line.lot);
                return <span key={line.lot} className={sectionStyles.small}>{tell(line.difference < 0 ? 'counts.less' : 'counts.more', { part: lot?.partName ?? line.lot, amount: amountWords(Math.abs(line.difference), lot?.unit ?? null) })}{line.note !== '' && ` · ${line.note}`}</span>;
              })}
            </li>
          );
        })}
      </ul>
    </Section>
  );
}
