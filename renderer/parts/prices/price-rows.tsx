import { Table } from '@mantine/core';
import type { PriceRow } from '../../../shared-core/views/prices/price-view.ts';
import { useWords } from '../../ui/household.tsx';
import sectionStyles from '../../ui/section.module.css';
import { tell } from '../../ui/words/tell.ts';
import { amountWords } from '../../ui/amount-words.ts';
import { PartsTable } from '../parts-table.tsx';
import { ShownMore } from '../shown-more.tsx';
import styles from '../parts.module.css';
import tones from '../../ui/tones.module.css';

const FIRST = 50;
const RANK = { refused: 0, 'new-price': 1, 'new-offer': 2, 'seen-again': 3, 'no-part': 4, known: 5 } as const;
const LOOK = { refused: tones.late, 'new-price': tones.later, 'new-offer': tones.later, 'seen-again': '', 'no-part': tones.soon, known: '' } as const;

/** Every row by its line with what it comes to: bad ones first, each with what to do. */
export function PriceRows({ rows }: { readonly rows: readonly PriceRow[] }) {
  const sorted = [...rows].sort((a, b) => RANK[a.outcome] - RANK[b.outcome] || a.line - b.line);
  return (
    <ShownMore items={sorted} first={FIRST}>
      {(shown) => (
        <PartsTable label={tell('prices.rows')} actions={false} columns={[{ name: tell('prices.line'), number: true }, { name: tell('prices.comes-to') }, { name: tell('line.part') }, { name: tell('line.price'), number: true }]}>
          {shown.map((row) => <RowShown key={row.line} row={row} />)}
        </PartsTable>
      )}
    </ShownMore>
  );
}

function RowShown({ row }: { readonly row: PriceRow }) {
  const words = useWords();
  return (
    <Table.Tr>
      <Table.Td className={sectionStyles.number}>{row.line}</Table.Td>
      <Table.Td className={styles.words}><span className={`${styles.state} ${LOOK[row.outcome] ?? ''}`}>{tell(`prices.outcome-${row.outcome}`)}</span>{row.said !== null && <div>{row.said.text}</div>}</Table.Td>
      <Table.Td className={styles.words}>
        {row.partName === null ? row.written : <>{row.partName}<div className={sectionStyles.small}>{[row.supplierName ?? '', ...(row.quantity === null ? [] : [amountWords(row.quantity, row.unit)]), ...(row.seenOn === null ? [] : [tell('prices.seen', { date: words.date(row.seenOn) })])].join(' · ')}</div></>}
      </Table.Td>
      <Table.Td className={sectionStyles.number}>{row.priceMinor !== null && words.money(row.priceMinor)}{row.beforeMinor !== null && row.beforeMinor !== row.priceMinor && <div className={sectionStyles.small}>{tell('prices.before', { amount: words.money(row.beforeMinor) })}</div>}</Table.Td>
    </Table.Tr>
  );
}
