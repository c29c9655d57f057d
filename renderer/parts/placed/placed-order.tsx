import { Button, Table } from '@mantine/core';
import { Link } from 'wouter';
import { daysBetween } from '../../../shared-core/calendar/local-date.ts';
import type { PartsView, PlacedOrderView } from '../../../shared-core/views/parts-view-schema.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { Section } from '../../ui/section.tsx';
import { tell } from '../../ui/words/tell.ts';
import { packWords } from '../../ui/amount-words.ts';
import { doChange } from '../../ui/do-change.ts';
import { PartsTable } from '../parts-table.tsx';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { PlacedMoney } from './placed-money.tsx';
import styles from '../parts.module.css';
import tones from '../../ui/tones.module.css';

interface PlacedOrderProps {
  readonly order: PlacedOrderView;
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
}

/** That something was short is news for so long: then it was bought elsewhere, or is not wanted any more. */
const SHORT_FOR_DAYS = 30;
const LOOK = { 'on-the-way': tones.soon, 'part-delivered': tones.soon, delivered: tones.later, cancelled: '' } as const;

/** One placed order: how it stands, its lines with what came of them, its money, and what can be done with it. */
export function PlacedOrder({ order, view, open }: PlacedOrderProps) {
  const words = useWords();
  const { order: placed, lines, state, supplierName } = order;
  const title = tell('placed.title', { supplier: supplierName, date: words.nearDate(placed.placedOn, view.today) });
  const isOpen = lines.some((one) => one.open > 0);
  const last = order.deliveries.at(-1)?.on;
  const short = last !== undefined && daysBetween(last, view.today) <= SHORT_FOR_DAYS && lines.some((one) => one.notComing > 0 || one.aside > 0);
  const back = lines.some((one) => one.goodsToReturn > 0 || one.depositsOpen > 0 || one.claimable > 0);
  const button = (key: 'placed.receive' | 'placed.change' | 'placed.back' | 'placed.cancel' | 'order.sheet', onPress: () => void, filled = false) => <Button size="compact-md" variant={filled ? 'filled' : 'default'} aria-label={`${tell(key)}: ${title}`} onClick={onPress}>{tell(key)}</Button>;
  return (
    <Section title={title} place={['order', placed.id]}>
      <p>
        <strong className={LOOK[state] ?? ''}>{tell(`placed.state-${state}`)}</strong>{' · '}
        {[
          ...(placed.number === null ? [] : [tell('placed.number', { number: placed.number })]),
          ...(isOpen ? [tell('placed.expected', { date: words.nearDate(placed.expectedOn, view.today) })] : []),
          ...(placed.returnBy === null ? [] : [tell(order.returnDaysLeft === null ? 'placed.return-over' : 'placed.return-by', { date: words.nearDate(placed.returnBy, view.today) })]),
          ...(placed.note === '' ? [] : [placed.note]),
        ].join(' · ')}
      </p>
      {order.overdueDays !== null && <p className={tones.late}>{tell('placed.overdue-by', { n: order.overdueDays })}</p>}
      {short && <p>{tell('placed.short')} <Link href="/parts/order">{tell('placed.re-solve')}</Link></p>}
      <PartsTable label={tell('placed.lines-of', { title })} actions={false} columns={[{ name: tell('line.part') }, { name: tell('placed.ordered'), number: true }, { name: tell('placed.good'), number: true }, { name: tell('placed.aside'), number: true }, { name: tell('placed.not-coming'), number: true }, { name: tell('placed.open'), number: true }, { name: tell('line.landed'), number: true }]}>
        {lines.map((one) => <LineRow key={one.line.id} line={one} />)}
      </PartsTable>
      <PlacedMoney order={order} view={view} open={open} />
      <div className={styles.actions}>
        {isOpen && button('placed.receive', () => open({ kind: 'receive', order: placed.id }), true)}
        {back && button('placed.back', () => open({ kind: 'send-back', order: placed.id }))}
        {button('placed.change', () => open({ kind: 'change-order', order: placed.id }))}
        {button('order.sheet', () => open({ kind: 'sheet', sheet: order.sheet }))}
        {isOpen && button('placed.cancel', () => void doChange('order.cancel', { order: placed.id }, tell('placed.cancelled', { supplier: supplierName }), true))}
      </div>
    </Section>
  );
}

function LineRow({ line: one }: { readonly line: PlacedOrderView['lines'][number] }) {
  const words = useWords();
  const count = (n: number, look = '') => <Table.Td className={sectionStyles.number}><span className={n === 0 ? (sectionStyles.soft ?? '') : look}>{n}</span></Table.Td>;
  const pack = packWords(one.line.quantity, one.unit);
  return (
    <Table.Tr>
      <Table.Td className={styles.name}>
        {one.partName}
        <div className={sectionStyles.small}>{[...(one.line.number === null ? [] : [one.line.number]), ...(pack === '' ? [] : [tell('line.in-pack', { amount: pack })]), ...(one.goodsReturned === 0 ? [] : [tell('placed.sent-back', { n: one.goodsReturned })])].join(' · ')}</div>
      </Table.Td>
      {count(one.line.packs)}
      {count(one.good, tones.later)}
      {count(one.aside, tones.late)}
      {count(one.notComing, tones.late)}
      {count(one.open, tones.soon)}
      <Table.Td className={sectionStyles.number}>{words.money(one.landedMinor)}</Table.Td>
    </Table.Tr>
  );
}
