import { Button, Table } from '@mantine/core';
import { Link } from 'wouter';
import type { OrderSheet } from '../../../shared-core/views/order-sheets.ts';
import type { OrderLineView, SupplierOrder } from '../../../shared-core/views/order-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { packWords } from '../../ui/amount-words.ts';
import { PartsTable } from '../parts-table.tsx';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import styles from '../parts.module.css';
import tones from '../../ui/tones.module.css';

interface SupplierSectionProps {
  readonly order: SupplierOrder;
  readonly sheet: OrderSheet;
  readonly isPlaced: boolean;
  readonly open: OpenPartsSheet;
}

/** What is bought from one supplier: its lines with packs, prices and for whom; delivery, and deposits as a line of their own. */
export function SupplierSection({ order, sheet, isPlaced, open }: SupplierSectionProps) {
  const words = useWords();
  const columns = [{ name: tell('line.part') }, { name: tell('line.packs'), number: true }, { name: tell('line.price'), number: true }, { name: tell('line.sum'), number: true }, { name: tell('line.landed'), number: true }, { name: tell('line.for') }];
  const sums = [
    { name: tell('sum.goods'), minor: order.goodsMinor },
    { name: tell('sum.delivery'), minor: order.deliveryMinor },
    { name: tell('sum.together'), minor: order.goodsMinor + order.deliveryMinor },
    ...(order.depositsMinor === 0 ? [] : [{ name: tell('sum.deposits'), minor: order.depositsMinor }]),
  ];
  const more = isPlaced ? <span className={tones.later}>{tell('order.placed-already')} <Link href="/parts/placed">{tell('order.to-placed')}</Link></span> : (
    <>
      <Button size="compact-md" variant="default" aria-label={tell('order.sheet-of', { supplier: order.supplierName })} onClick={() => open({ kind: 'sheet', sheet })}>{tell('order.sheet')}</Button>
      <Button size="compact-md" aria-label={tell('order.place-of', { supplier: order.supplierName })} onClick={() => open({ kind: 'place', proposed: order })}>{tell('order.place')}</Button>
    </>
  );
  return (
    <Section title={order.supplierName} hint={tell('order.here', { n: order.leadDays, date: words.date(order.expectedOn) })} more={more}>
      <PartsTable label={tell('order.lines-of', { supplier: order.supplierName })} columns={columns} actions={false}>
        {order.lines.map((line) => <LineRow key={line.offer} line={line} />)}
        {sums.map(({ name, minor }) => (
          <Table.Tr key={name} className={styles.total ?? ''}>
            <Table.Th scope="row" colSpan={3}>{name}</Table.Th>
            <Table.Td className={sectionStyles.number}>{words.money(minor)}</Table.Td>
            <Table.Td colSpan={2} />
          </Table.Tr>
        ))}
      </PartsTable>
    </Section>
  );
}

function LineRow({ line }: { readonly line: OrderLineView }) {
  const words = useWords();
  const cars = [...new Set(line.for.map((one) => one.carName))].sort(words.byName);
  const pack = packWords(line.quantity, line.unit);
  return (
    <Table.Tr>
      <Table.Td className={styles.name}>
        {line.partName}
        <div className={sectionStyles.small}>{[...(line.number === null ? [] : [line.number]), ...(line.numberNow === null ? [] : [tell('line.number-now', { number: line.numberNow })]), ...(pack === '' ? [] : [tell('line.in-pack', { amount: pack })])].join(' · ')}</div>
        {line.stale && <div className={tones.soon}>{tell('line.stale', { date: words.date(line.seenOn) })}</div>}
        {line.depositMinor > 0 && <div className={sectionStyles.small}>{tell('line.deposit', { amount: words.money(line.depositMinor) })}</div>}
      </Table.Td>
      <Table.Td className={sectionStyles.number}>{line.packs}</Table.Td>
      <Table.Td className={sectionStyles.number}>{words.money(line.priceMinor)}</Table.Td>
      <Table.Td className={sectionStyles.number}>{words.money(line.totalMinor)}</Table.Td>
      <Table.Td className={sectionStyles.number}>{words.money(line.landedMinor)}</Table.Td>
      <Table.Td className={styles.words}>{cars.length === 0 ? tell('line.for-shelf') : cars.join(', ')}</Table.Td>
    </Table.Tr>
  );
}
