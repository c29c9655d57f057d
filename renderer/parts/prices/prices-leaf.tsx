import { useState } from 'react';
import { Link } from 'wouter';
import type { PartsView } from '../../../shared-core/views/parts-view-schema.ts';
import { tell } from '../../ui/words/tell.ts';
import { ListSource } from './list-source.tsx';
import type { PriceTable } from './price-table.ts';
import { PricesLooked } from './prices-looked.tsx';
import styles from '../parts.module.css';

/** Takes in a supplier's price list: pasted or chosen, looked at row by row, then kept as one whole. */
export function PricesLeaf({ view }: { readonly view: PartsView }) {
  const [table, setTable] = useState<PriceTable | null>(null);
  return (
    <div className={styles.leaf}>
      <p className={styles.lead}>{tell('prices.lead')} <Link href="/parts/offers">{tell('prices.back')}</Link></p>
      <ListSource onTable={setTable} />
      {table !== null && <PricesLooked key={table.key} table={table} view={view} onKept={() => setTable(null)} />}
    </div>
  );
}
