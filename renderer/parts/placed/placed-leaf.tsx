import { Button } from '@mantine/core';
import { Link } from 'wouter';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import sectionStyles from '../../ui/section.module.css';
import { tell } from '../../ui/words/tell.ts';
import type { OpenPartsSheet } from '../parts-sheet.ts';
import { ShownMore } from '../shown-more.tsx';
import { PlacedOrder } from './placed-order.tsx';
import styles from '../parts.module.css';

interface PlacedLeafProps {
  readonly view: PartsView;
  readonly open: OpenPartsSheet;
}

const FIRST = 10;

/** The orders that were placed: what is still to come before what is settled. */
export function PlacedLeaf({ view, open }: PlacedLeafProps) {
  const coming = view.orders.filter((one) => one.state === 'on-the-way' || one.state === 'part-delivered');
  const overdue = coming.filter((one) => one.overdueDays !== null).length;
  const settled = view.orders.filter((one) => !coming.includes(one));
  const sentence = view.orders.length === 0 ? tell('placed.none') : `${tell('placed.count', { n: coming.length })}${overdue === 0 ? '' : ` ${tell('placed.overdue', { n: overdue })}`}`;
  return (
    <div className={styles.leaf}>
      <p className={styles.lead}>{sentence} {view.orders.length === 0 && <Link href="/parts/order">{tell('placed.to-order')}</Link>}</p>
      <div className={styles.actions}>
        {view.suppliers.length === 0 ? <p className={sectionStyles.soft}>{tell('placed.no-supplier')}</p> : <Button variant="default" onClick={() => open({ kind: 'by-hand' })}>{tell('placed.by-hand')}</Button>}
      </div>
      {coming.map((order) => <PlacedOrder key={order.order.id} order={order} view={view} open={open} />)}
      <ShownMore items={settled} first={FIRST} placeOf={({ order }) => `order-${order.id}`}>{(shown) => shown.map((order) => <PlacedOrder key={order.order.id} order={order} view={view} open={open} />)}</ShownMore>
    </div>
  );
}
