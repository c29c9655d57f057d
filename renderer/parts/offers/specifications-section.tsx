import type { PartsView, SpecificationView } from '../../../shared-core/views/parts-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { placeOf } from '../../ui/sought.ts';
import { isWordKey, tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { ShownMore } from '../shown-more.tsx';
import { SmallButton } from '../../ui/small-button.tsx';
import type { Has } from './has.ts';
import styles from '../parts.module.css';
import tones from '../../ui/tones.module.css';

interface SpecificationsSectionProps {
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
  readonly has: Has;
}

const FIRST = 10;

/** The specifications: what each asks, who asks for it, what meets it and who says so, and what it never goes with. */
export function SpecificationsSection({ view, open, has }: SpecificationsSectionProps) {
  const { byName } = useWords();
  const found = view.specifications.filter(({ specification, metBy }) => has(specification.name, ...specification.asks.map((one) => one.text), ...metBy.map((one) => one.name))).sort((a, b) => byName(a.specification.name, b.specification.name));
  return (
    <Section title={tell('specifications.title')} hint={tell('specifications.hint')} add={{ label: tell('specifications.add'), onAdd: () => open({ kind: 'specification', specification: null }) }}>
      {found.length === 0 ? <p className={sectionStyles.soft}>{tell(view.specifications.length === 0 ? 'specifications.none' : 'specifications.none-found')}</p> : (
        <ShownMore items={found} first={FIRST} placeOf={({ specification }) => `specification-${specification.id}`}>{(shown) => <ul className={sectionStyles.list}>{shown.map((one) => <SpecificationRow key={one.specification.id} one={one} open={open} />)}</ul>}</ShownMore>
      )}
    </Section>
  );
}

function SpecificationRow({ one, open }: { readonly one: SpecificationView; readonly open: OpenPartsSheet }) {
  const { byName } = useWords();
  const { specification, askedBy, metBy, neverWith } = one;
  const { name, unit } = specification;
  const cars = [...new Set(askedBy.map((ask) => ask.carName))].sort(byName);
  const preferred = [...metBy].sort((a, b) => (a.preferred ?? metBy.length) - (b.preferred ?? metBy.length));
  return (
    <li {...placeOf('specification', specification.id)} className={styles.row}>
      <div className={styles.head}>
        <strong>{name}</strong>
        <span className={styles.rowActions}>
          <SmallButton of={name} onPress={() => open({ kind: 'specification', specification: specification.id })}>{tell('parts.change')}</SmallButton>
          {metBy.length > 1 && <SmallButton of={name} onPress={() => open({ kind: 'preference', specification: specification.id })}>{tell('specifications.prefer')}</SmallButton>}
          <SmallButton of={name} onPress={() => open({ kind: 'part', part: null, meets: specification.id })}>{tell('specifications.part')}</SmallButton>
        </span>
      </div>
      {specification.asks.length > 0 && <p className={sectionStyles.small}>{specification.asks.map((ask) => tell('specifications.ask', { kind: askName(ask.kind), text: ask.text })).join(' · ')}</p>}
      <p className={sectionStyles.small}>{[cars.length === 0 ? tell('specifications.asked-by-none') : tell('specifications.asked-by', { cars: cars.join(', ') }), one.onShelf === 0 ? tell('specifications.there-is-none') : tell('specifications.there-is', { amount: amountWords(one.onShelf, unit) }), ...(one.coming > 0 ? [tell('specifications.coming', { amount: amountWords(one.coming, unit) })] : [])].join(' · ')}</p>
      {metBy.length === 0 ? <p className={tones.soon}>{tell('specifications.met-by-none')}</p> : <p className={sectionStyles.small}>{tell('specifications.met-by', { parts: preferred.map((part) => tell(part.preferred === 0 && metBy.length > 1 ? 'specifications.part-first' : 'specifications.part-said', { part: part.name, said: part.said })).join('; ') })}</p>}
      {neverWith.map((other) => <p key={other.specification} className={tones.late}>{tell(other.rule === 'never' ? 'specifications.never' : 'specifications.ask-first', { why: other.why.text })}</p>)}
    </li>
  );
}

function askName(kind: string): string {
  const key = `ask-kind.${kind}`;
  return isWordKey(key) ? tell(key) : kind;
}
