import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { placeOf } from '../../ui/sought.ts';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { ShownMore } from '../shown-more.tsx';
import { SmallButton } from '../../ui/small-button.tsx';
import type { Has } from './has.ts';
import styles from '../parts.module.css';

interface PartsSectionProps {
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
  readonly has: Has;
}

const FIRST = 10;

/** The parts: their numbers, what they meet on whose word, and what a kit holds. */
export function PartsSection({ view, open, has }: PartsSectionProps) {
  const { byName } = useWords();
  const named = new Map(view.specifications.map(({ specification }) => [specification.id, specification.name]));
  const found = view.parts.filter(({ part, formerNumbers }) => has(part.name, part.number, ...formerNumbers)).sort((a, b) => byName(a.part.name, b.part.name));
  const about = (one: PartsView['parts'][number]) => [
    ...(one.part.number === null ? [] : [one.part.number]),
    ...(one.numberNow === null ? [] : [tell('line.number-now', { number: one.numberNow })]),
    ...(one.formerNumbers.length === 0 ? [] : [tell('parts-list.formerly', { numbers: one.formerNumbers.join(', ') })]),
    ...(one.onShelf === 0 ? [] : [tell('parts-list.on-shelf', { amount: amountWords(one.onShelf, one.unit) })]),
  ];
  const does = ({ part, contains }: PartsView['parts'][number]) =>
    contains.length > 0 ? tell('parts-list.holds', { parts: contains.map((one) => tell('parts-list.holds-one', { n: one.quantity, part: one.name })).join(', ') })
    : part.meets.length === 0 ? tell('parts-list.meets-nothing')
    : tell('parts-list.meets', { specifications: part.meets.map((id) => named.get(id) ?? id).join(', ') });
  return (
    <Section title={tell('parts-list.title')} add={{ label: tell('parts-list.add'), onAdd: () => open({ kind: 'part', part: null, meets: null }) }}>
      {found.length === 0 ? <p className={sectionStyles.soft}>{tell(view.parts.length === 0 ? 'parts-list.none' : 'parts-list.none-found')}</p> : (
        <ShownMore items={found} first={FIRST} placeOf={({ part }) => `part-${part.id}`}>
          {(shown) => (
            <ul className={sectionStyles.list}>
              {shown.map((one) => (
                <li key={one.part.id} {...placeOf('part', one.part.id)} className={styles.row}>
                  <div className={styles.head}>
                    <span><strong>{one.part.name}</strong> <span className={sectionStyles.small}>{about(one).join(' · ')}</span></span>
                    <span className={styles.rowActions}>
                      <SmallButton of={one.part.name} onPress={() => open({ kind: 'part', part: one.part.id, meets: null })}>{tell('parts.change')}</SmallButton>
                      {view.suppliers.length > 0 && <SmallButton of={one.part.name} onPress={() => open({ kind: 'offer', offer: null, part: one.part.id })}>{tell('parts-list.offer')}</SmallButton>}
                    </span>
                  </div>
                  <p className={sectionStyles.small}>{does(one)}</p>
                </li>
              ))}
            </ul>
          )}
        </ShownMore>
      )}
    </Section>
  );
}
