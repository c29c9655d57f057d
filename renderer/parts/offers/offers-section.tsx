import { Table } from '@mantine/core';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { placeOf, useSought } from '../../ui/sought.ts';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import { doChange } from '../../ui/do-change.ts';
import { PartsTable } from '../parts-table.tsx';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { ShownMore } from '../shown-more.tsx';
import { SmallButton } from '../../ui/small-button.tsx';
import type { Has } from './has.ts';
import styles from '../parts.module.css';
import tones from '../../ui/tones.module.css';

type Offer = PartsView['offers'][number];

interface OffersSectionProps {
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
  readonly has: Has;
}

const FIRST = 10;

/** The offers by part, with the day their price was seen: old prices are marked, those withdrawn are folded away. */
export function OffersSection({ view, open, has }: OffersSectionProps) {
  const { byName } = useWords();
  const sought = useSought();
  const found = view.offers.filter((one) => has(one.partName, one.supplierName, one.offer.number)).sort((a, b) => byName(a.partName, b.partName) || a.paidMinor / a.offer.quantity - b.paidMinor / b.offer.quantity);
  const standing = found.filter((one) => one.offer.withdrawnOn === null);
  const withdrawn = found.filter((one) => one.offer.withdrawnOn !== null);
  const ready = view.suppliers.length > 0 && view.parts.length > 0;
  return (
    <Section title={tell('offers.title')} {...(ready ? { add: { label: tell('offers.add'), onAdd: () => open({ kind: 'offer', offer: null, part: null }) } } : {})}>
      {standing.length === 0 ? <p className={sectionStyles.soft}>{tell(!ready ? 'offers.first' : view.offers.length === 0 ? 'offers.none' : 'offers.none-found')}</p> : (
        <ShownMore items={standing} first={FIRST} placeOf={({ offer }) => `offer-${offer.id}`}>
          {(shown) => (
            <PartsTable label={tell('offers.title')} columns={[{ name: tell('line.part') }, { name: tell('offers.supplier') }, { name: tell('offers.pack') }, { name: tell('line.price'), number: true }, { name: tell('offers.seen') }]}>
              {shown.map((one) => <OfferRow key={one.offer.id} one={one} view={view} open={open} />)}
            </PartsTable>
          )}
        </ShownMore>
      )}
      {withdrawn.length > 0 && (
        <details className={styles.fold} open={withdrawn.some((one) => sought === `offer-${one.offer.id}`)}>
          <summary>{tell('offers.withdrawn', { n: withdrawn.length })}</summary>
          <ul className={sectionStyles.list}>
            {withdrawn.map((one) => (
              <li key={one.offer.id} {...placeOf('offer', one.offer.id)} className={styles.row}>
                <div className={styles.head}><span>{offerName(one)}</span><SmallButton of={offerName(one)} onPress={() => open({ kind: 'seen', offer: one.offer.id })}>{tell('offers.see')}</SmallButton></div>
              </li>
            ))}
          </ul>
        </details>
      )}
    </Section>
  );
}

function offerName(one: Offer): string {
  return tell('offers.name', { part: one.partName, supplier: one.supplierName });
}

function OfferRow({ one, view, open }: { readonly one: Offer; readonly view: PartsView; readonly open: OpenPartsSheet }) {
  const words = useWords();
  const { offer } = one;
  const name = offerName(one);
  const about = [
    ...(offer.number === null ? [] : [offer.number]),
    ...(one.numberNow === null ? [] : [tell('line.number-now', { number: one.numberNow })]),
    ...(offer.most === null ? [] : [tell('offers.most', { n: offer.most })]),
  ];
  const prices = [
    ...offer.breaks.map((step) => tell('offers.break', { n: step.packs, amount: words.money(step.priceMinor) })),
    ...(offer.taxAdded === null ? [] : [tell('offers.tax', { amount: words.money(offer.priceMinor), tax: offer.taxAdded / 100 })]),
    ...(offer.depositMinor === 0 ? [] : [tell('line.deposit', { amount: words.money(offer.depositMinor) })]),
  ];
  return (
    <Table.Tr {...placeOf('offer', offer.id)}>
      <Table.Td className={styles.name}>{one.partName}{about.length > 0 && <div className={sectionStyles.small}>{about.join(' · ')}</div>}</Table.Td>
      <Table.Td className={styles.words}>{one.supplierName}</Table.Td>
      <Table.Td className={sectionStyles.date}>{amountWords(offer.quantity, one.unit)}</Table.Td>
      <Table.Td className={sectionStyles.number}>{words.money(one.paidMinor)}{prices.map((text) => <div key={text} className={sectionStyles.small}>{text}</div>)}</Table.Td>
      <Table.Td className={sectionStyles.date}>{words.nearDate(offer.seenOn, view.today)}{one.stale && <div className={tones.soon}><strong>{tell('offers.stale', { n: one.ageDays })}</strong></div>}</Table.Td>
      <Table.Td>
        <div className={styles.rowActions}>
          <SmallButton of={name} onPress={() => open({ kind: 'seen', offer: offer.id })}>{tell('offers.see')}</SmallButton>
          <SmallButton of={name} onPress={() => open({ kind: 'offer', offer: offer.id, part: null })}>{tell('parts.change')}</SmallButton>
          <SmallButton of={name} onPress={() => void doChange('offer.withdraw', { id: offer.id }, tell('offers.withdrawn-done', { name }), true)}>{tell('offers.withdraw')}</SmallButton>
        </div>
      </Table.Td>
    </Table.Tr>
  );
}
