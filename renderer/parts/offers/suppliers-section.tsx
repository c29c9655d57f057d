import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { placeOf } from '../../ui/sought.ts';
import { tell } from '../../ui/words/tell.ts';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { SmallButton } from '../../ui/small-button.tsx';
import styles from '../parts.module.css';

interface SuppliersSectionProps {
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
}

/** Who sells, and on what terms of delivery. */
export function SuppliersSection({ view, open }: SuppliersSectionProps) {
  const words = useWords();
  const about = (one: PartsView['suppliers'][number]) => [
    one.deliveryMinor === 0 ? tell('suppliers.free') : tell('suppliers.delivery', { amount: words.money(one.deliveryMinor) }),
    ...(one.freeFromMinor === null ? [] : [tell('suppliers.free-from', { amount: words.money(one.freeFromMinor) })]),
    ...(one.minimumMinor === 0 ? [] : [tell('suppliers.minimum', { amount: words.money(one.minimumMinor) })]),
    tell('suppliers.lead', { n: one.leadDays }),
    tell('suppliers.offers', { n: view.offers.filter((offer) => offer.offer.supplier === one.id && offer.offer.withdrawnOn === null).length }),
  ];
  return (
    <Section title={tell('suppliers.title')} add={{ label: tell('suppliers.add'), onAdd: () => open({ kind: 'supplier', supplier: null }) }}>
      {view.suppliers.length === 0 && <p className={sectionStyles.soft}>{tell('suppliers.none')}</p>}
      <ul className={sectionStyles.list}>
        {[...view.suppliers].sort((a, b) => words.byName(a.name, b.name)).map((one) => (
          <li key={one.id} {...placeOf('supplier', one.id)} className={styles.row}>
            <div className={styles.head}>
              <span><strong>{one.name}</strong> <span className={sectionStyles.small}>{about(one).join(' · ')}</span></span>
              <SmallButton of={one.name} onPress={() => open({ kind: 'supplier', supplier: one.id })}>{tell('parts.change')}</SmallButton>
            </div>
          </li>
        ))}
      </ul>
    </Section>
  );
}
