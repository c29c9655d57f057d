import { Button, NativeSelect, Table } from '@mantine/core';
import { useState } from 'react';
import type { LotView, PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { placeOf, useSought } from '../../ui/sought.ts';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import { PartsTable } from '../parts-table.tsx';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { ShownMore } from '../shown-more.tsx';
import { SmallButton } from '../../ui/small-button.tsx';
import { inUseOrder } from './use-order.ts';
import styles from '../parts.module.css';
import tones from '../../ui/tones.module.css';

interface LotsSectionProps {
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
}

const FIRST = 60;

/** The lots: of each part the one to be used first at its head; what has expired is marked, what is used up folded away. */
export function LotsSection({ view, open }: LotsSectionProps) {
  const { byName } = useWords();
  const sought = useSought();
  const [place, setPlace] = useState('');
  const places = [...new Set(view.shelf.filter((one) => one.left > 0).flatMap((one) => one.lot.where ?? []))].sort(byName);
  const chosen = places.includes(place) ? place : '';
  const standing = inUseOrder(view.shelf.filter((one) => one.left > 0 && (chosen === '' || one.lot.where === chosen)), byName);
  const used = view.shelf.filter((one) => one.left === 0);
  const more = view.shelf.some((one) => one.left > 0) ? <Button size="compact-md" variant="default" onClick={() => open({ kind: 'count' })}>{tell('shelf.count')}</Button> : undefined;
  return (
    <Section title={tell('shelf.title')} hint={tell('shelf.hint')} more={more} add={{ label: tell('shelf.add'), onAdd: () => open({ kind: 'lot' }) }}>
      {places.length > 1 && <NativeSelect label={tell('lot.where')} value={chosen} onChange={(event) => setPlace(event.currentTarget.value)} data={[{ value: '', label: tell('shelf.all-places') }, ...places]} />}
      {standing.length === 0 ? <p className={sectionStyles.soft}>{tell('shelf.none')}</p> : (
        <ShownMore items={standing} first={FIRST} placeOf={({ lot }) => `lot-${lot.id}`}>
          {(shown) => (
            <PartsTable label={tell('shelf.title')} columns={[{ name: tell('line.part') }, { name: tell('shelf.left'), number: true }, { name: tell('shelf.opened') }, { name: tell('shelf.good-until') }, { name: tell('lot.where') }]}>
              {shown.map((one) => <LotRow key={one.lot.id} one={one} view={view} open={open} />)}
            </PartsTable>
          )}
        </ShownMore>
      )}
      {used.length > 0 && (
        <details className={styles.fold} open={used.some((one) => sought === `lot-${one.lot.id}`)}>
          <summary>{tell('shelf.used-up', { n: used.length })}</summary>
          <ul className={sectionStyles.list}>{used.map((one) => <UsedRow key={one.lot.id} one={one} />)}</ul>
        </details>
      )}
    </Section>
  );
}

function LotRow({ one, view, open }: { readonly one: LotView; readonly view: PartsView; readonly open: OpenPartsSheet }) {
  const words = useWords();
  const { lot, left, openedOn, goodUntil, state, useAs } = one;
  const several = view.shelf.filter((other) => other.lot.part === lot.part && other.useAs !== null).length > 1;
  const of = tell('shelf.lot', { part: one.partName, amount: amountWords(left, one.unit) });
  return (
    <Table.Tr {...placeOf('lot', lot.id)}>
      <Table.Td className={styles.name}>
        {one.partName}
        {useAs === 1 && several && <div className={tones.later}>{tell('shelf.use-first')}</div>}
        {one.worthMinor !== null && <div className={sectionStyles.small}>{tell('shelf.worth', { amount: words.money(one.worthMinor) })}</div>}
      </Table.Td>
      <Table.Td className={sectionStyles.number}>{amountWords(left, one.unit)}{left !== lot.quantity && <div className={sectionStyles.small}>{tell('shelf.of', { amount: amountWords(lot.quantity, one.unit) })}</div>}</Table.Td>
      <Table.Td className={sectionStyles.date}>{openedOn === null ? tell('shelf.whole') : words.nearDate(openedOn, view.today)}</Table.Td>
      <Table.Td className={sectionStyles.date}>
        {goodUntil === null ? tell('shelf.no-date') : words.date(goodUntil)}
        {state === 'expired' && <div className={tones.late}><strong>{tell('shelf.expired')}</strong></div>}
      </Table.Td>
      <Table.Td className={styles.words}>{lot.where ?? tell('shelf.no-place')}</Table.Td>
      <Table.Td>
        <div className={styles.rowActions}>
          {state !== 'expired' && <SmallButton of={of} onPress={() => open({ kind: 'use', lot: lot.id })}>{tell('shelf.use')}</SmallButton>}
          <SmallButton of={of} onPress={() => open({ kind: 'opened', lot: lot.id })}>{tell('shelf.open')}</SmallButton>
          <SmallButton of={of} onPress={() => open({ kind: 'move', lot: lot.id })}>{tell('shelf.move')}</SmallButton>
          <SmallButton of={of} onPress={() => open({ kind: 'discard', lot: lot.id })}>{tell('shelf.discard')}</SmallButton>
        </div>
      </Table.Td>
    </Table.Tr>
  );
}

function UsedRow({ one }: { readonly one: LotView }) {
  const words = useWords();
  return <li {...placeOf('lot', one.lot.id)} className={styles.row}>{tell('shelf.used-lot', { part: one.partName, amount: amountWords(one.lot.quantity, one.unit), date: words.date(one.lot.receivedOn) })}</li>;
}
